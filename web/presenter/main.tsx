/** The second page: what the presenter sees. The lesson runs on the stage; this window follows it. */
import '../style.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { startPresenterEnd } from '../channel/presenter-end.ts'
import { roomIn } from '../channel/room.ts'
import { FIRST_MACHINE } from '../file/first-machine.ts'
import { browserKeeper } from '../file/storage.ts'
import { firstTheme } from '../file/theme.ts'
import { WorkshopProvider, createWorkshop } from '../frame/workshop.ts'
import { NoStage } from './NoStage.tsx'
import { PresenterPage } from './PresenterPage.tsx'
import { keepClock } from './keep-clock.ts'
import { PresenterProvider } from './presenter-context.ts'

const keeper = browserKeeper()
const theme = firstTheme(keeper)
const mirror = createWorkshop(FIRST_MACHINE.machine, theme)
const room = roomIn(location.hash)
const root = createRoot(document.querySelector('#root')!)
document.documentElement.dataset['theme'] = theme

if (room === null) root.render(<NoStage />)
else {
  const end = startPresenterEnd(mirror, room, window.opener as Window | null)
  const clock = keepClock(mirror, keeper)
  root.render(
    <StrictMode>
      <WorkshopProvider value={mirror}>
        <PresenterProvider value={{ end, clock }}>
          <PresenterPage />
        </PresenterProvider>
      </WorkshopProvider>
    </StrictMode>,
  )
}
