import './style.css'
import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import { exposeExact } from './exact.ts'
import { WorkshopProvider } from './frame/workshop.ts'
import { openBench } from './opening.ts'

const { workshop, ...opening } = openBench()
exposeExact(workshop)
createRoot(document.querySelector('#root')!).render(
  <WorkshopProvider value={workshop}>
    <App {...opening} />
  </WorkshopProvider>,
)
