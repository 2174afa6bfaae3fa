/** What is fetched after the first picture: at once when somebody asks for it, else when the page has nothing to do. */
import { lazy } from 'react'
import { judge } from './demonstrate/judge.ts'

const loaders = {
  prediction: () => import('./predict/PredictionSheet.tsx'),
  part: () => import('./instrument/PartCard.tsx'),
  flag: () => import('./instrument/TapeFlag.tsx'),
  formula: () => import('./instrument/FormulaPanel.tsx'),
  design: () => import('./design/DesignSheet.tsx'),
  parameters: () => import('./design/ParameterSheet.tsx'),
  units: () => import('../sim/quantity/quantity.ts'),
  entries: () => import('../sim/quantity/entry.ts'),
  facts: () => import('./design/DesignFacts.tsx'),
  note: () => import('./demonstrate/StageNote.tsx'),
  keys: () => import('./bar/KeysSheet.tsx'),
  lessonCard: () => import('./lesson/LessonCard.tsx'),
  topics: () => import('./lesson/TopicStepper.tsx'),
  lessons: () => import('./lesson/LessonsSheet.tsx'),
  lessonStart: () => import('./lesson/LessonStart.tsx'),
  stageLink: () => import('./presenter/StageLink.tsx'),
  editor: () => import('./lesson/EditorSheet.tsx'),
  worksheet: () => import('./worksheet/WorksheetSheet.tsx'),
  record: () => import('./record/RecordSheet.tsx'),
  machines: () => import('./file/MachineSheet.tsx'),
  checks: judge.fetch,
  gearingFields: () => import('../sim/machine/fields-gearing.ts'),
  clash: () => import('../sim/machine/timing-problems.ts'),
  links: () => import('./file/open-text.ts'),
  files: () => import('./file/open-save.ts'),
  opening: () => import('./file/open-machine.ts'),
  keeping: () => import('./file/link-for.ts'),
  readings: () => import('./instrument/Readings.tsx'),
  waves: () => import('./drive/WavesPanel.tsx'),
  torque: () => import('./drive/TorquePanel.tsx'),
  power: () => import('./drive/PowerPanel.tsx'),
  wayInLarge: () => import('./drive/WayInLarge.tsx'),
  heat: () => import('./drive/HeatPanel.tsx'),
  heatScale: () => import('./drive/HeatScale.tsx'),
  brushes: () => import('./drive/BrushesPanel.tsx'),
  contact: () => import('./gears/ContactPanel.tsx'),
  forces: () => import('./gears/ForcesPanel.tsx'),
  timing: () => import('./timing/TimingPanel.tsx'),
  models: () => import('./models/ModelsPanel.tsx'),
  modelFiles: () => import('./models/answer.ts'),
  sceneFile: () => import('./models/scene-file.ts'),
  supply: () => import('./demonstrate/DrivePanel.tsx'),
  choices: () => import('./demonstrate/StageChoices.tsx'),
  labels: () => import('./demonstrate/StageLabels.tsx'),
  sparks: () => import('./drive/BrushesSparkFeed.tsx'),
  arrows: () => import('./gears/ForceArrowsFeed.tsx'),
  signs: () => import('./scene/signs/GearSigns.tsx'),
  electric: () => import('./scene/electric/electric-bodies.ts'),
}

export const PredictionSheet = lazy(async () => ({ default: (await loaders.prediction()).PredictionSheet }))
export const TapeFlag = lazy(async () => ({ default: (await loaders.flag()).TapeFlag }))
export const PartCard = lazy(async () => ({ default: (await loaders.part()).PartCard }))
export const DesignSheet = lazy(async () => ({ default: (await loaders.design()).DesignSheet }))
export const DesignFacts = lazy(async () => ({ default: (await loaders.facts()).DesignFacts }))
export const Readings = lazy(async () => ({ default: (await loaders.readings()).Readings }))
export const WavesPanel = lazy(async () => ({ default: (await loaders.waves()).WavesPanel }))
export const TorquePanel = lazy(async () => ({ default: (await loaders.torque()).TorquePanel }))
export const PowerPanel = lazy(async () => ({ default: (await loaders.power()).PowerPanel }))
export const WayInLarge = lazy(async () => ({ default: (await loaders.wayInLarge()).WayInLarge }))
export const HeatPanel = lazy(async () => ({ default: (await loaders.heat()).HeatPanel }))
export const HeatScale = lazy(async () => ({ default: (await loaders.heatScale()).HeatScale }))
export const BrushesPanel = lazy(async () => ({ default: (await loaders.brushes()).BrushesPanel }))
export const ContactPanel = lazy(async () => ({ default: (await loaders.contact()).ContactPanel }))
export const ForcesPanel = lazy(async () => ({ default: (await loaders.forces()).ForcesPanel }))
export const TimingPanel = lazy(async () => ({ default: (await loaders.timing()).TimingPanel }))
export const ModelsPanel = lazy(async () => ({ default: (await loaders.models()).ModelsPanel }))
export const DrivePanel = lazy(async () => ({ default: (await loaders.supply()).DrivePanel }))
export const StageChoices = lazy(async () => ({ default: (await loaders.choices()).StageChoices }))
export const StageLabels = lazy(async () => ({ default: (await loaders.labels()).StageLabels }))
export const StageNote = lazy(async () => ({ default: (await loaders.note()).StageNote }))
export const KeysSheet = lazy(async () => ({ default: (await loaders.keys()).KeysSheet }))
export const LessonCard = lazy(async () => ({ default: (await loaders.lessonCard()).LessonCard }))
export const TopicStepper = lazy(async () => ({ default: (await loaders.topics()).TopicStepper }))
export const LessonStart = lazy(async () => ({ default: (await loaders.lessonStart()).LessonStart }))
export const LessonsSheet = lazy(async () => ({ default: (await loaders.lessons()).LessonsSheet }))
export const StageLink = lazy(async () => ({ default: (await loaders.stageLink()).StageLink }))
export const EditorSheet = lazy(async () => ({ default: (await loaders.editor()).EditorSheet }))
export const WorksheetSheet = lazy(async () => ({ default: (await loaders.worksheet()).WorksheetSheet }))
export const RecordSheet = lazy(async () => ({ default: (await loaders.record()).RecordSheet }))
export const SparkFeed = lazy(async () => ({ default: (await loaders.sparks()).BrushesSparkFeed }))
export const ForceArrowsFeed = lazy(async () => ({ default: (await loaders.arrows()).ForceArrowsFeed }))

/** Fetches all of it, so that nothing is waited for later, nor missing when the network goes. */
export function fetchLater(): void {
  const ask = globalThis.requestIdleCallback ?? ((act: () => void) => setTimeout(act, 500))
  ask(() => void Promise.all(Object.values(loaders).map((load) => load())))
}
