import './style.css'
import { createRoot } from 'react-dom/client'
import { App } from './App.tsx'
import { exposeExact } from './exact.ts'
import { WorkshopProvider } from './frame/workshop.ts'
import { type OpenBench, openBench } from './opening.ts'

const root = document.querySelector('#root')!

function show({ workshop, ...opening }: OpenBench): void {
  exposeExact(workshop)
  createRoot(root).render(
    <WorkshopProvider value={workshop}>
      <App {...opening} />
    </WorkshopProvider>,
  )
}

/** What was kept, and the link in the address, are left as they are for the next try. */
function sayNotOpened(reason: unknown): never {
  root.textContent = 'A part of this page could not be fetched. Reload it to try again.'
  throw reason
}

// awaited by nobody: what is fetched to open a link waits for this module in turn
void openBench().then(show, sayNotOpened)
