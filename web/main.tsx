import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import { openBench } from './file/opening.ts'
import { WorkshopProvider } from './frame/workshop.ts'
import { exposeForChecks } from './frame/exact.ts'
import './style.css'

const workshop = openBench()
exposeForChecks(workshop)
createRoot(document.querySelector('#root')!).render(
  <WorkshopProvider value={workshop}>
    <App />
  </WorkshopProvider>,
)
