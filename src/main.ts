import '@fontsource-variable/atkinson-hyperlegible-mono/wght.css'
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import { mount } from 'svelte'
import { demo } from './data/demo'
import { BatchDesk } from './state/batch.svelte'
import { Explorer } from './state/explorer.svelte'
import App from './ui/App.svelte'
import './ui/styles/tokens.css'
import './ui/styles/base.css'
import { SolverClient } from './worker/client'
import { startPageThread } from './worker/page-thread'

const { name, currency, shelf, wishes, goal, axes, batch } = demo
const explorer = new Explorer(
  { name, currency, shelf, groups: [], wishes, goal, axes },
  new SolverClient(startPageThread),
)
const desk = new BatchDesk(batch, () => explorer.present?.blend)

const target = document.querySelector('#app')
if (!target) throw new Error('The page has no place for the app')
mount(App, { target, props: { explorer, desk } })
