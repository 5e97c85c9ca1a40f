import '@fontsource-variable/atkinson-hyperlegible-mono/wght.css'
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css'
import { mount } from 'svelte'
import { BarDesk } from './state/bar.svelte'
import { Bench } from './state/bench.svelte'
import { BenchStudies } from './state/bench-study.svelte'
import { Confirmer } from './state/confirmer.svelte'
import { Explorer } from './state/explorer.svelte'
import { FIRST_WORK } from './state/first-work'
import { Improving } from './state/improve.svelte'
import { takeOwnOilsFrom } from './state/library'
import { MapView } from './state/map-view.svelte'
import { WorkHistory } from './state/history.svelte'
import { WorkKeeper } from './state/keeper.svelte'
import { pageSolver } from './state/page-solver'
import { ReasonsDesk } from './state/reasons.svelte'
import { WorkStore } from './storage/work-store'
import App from './ui/App.svelte'
import { BriefDesk } from './ui/desks/brief-desk.svelte'
import { PagePlace } from './ui/place.svelte'
import { nameResult } from './ui/bench/study-words'
import './ui/styles/tokens.css'
import './ui/styles/base.css'

const keeper = new WorkKeeper(new WorkStore())
const work = new WorkHistory(await keeper.start(FIRST_WORK))
keeper.follow(work)
takeOwnOilsFrom(() => work.now.ownOils)
const client = pageSolver()
// What takes long or can wait has a thread of its own, so that the brief goes on answering.
const patient = pageSolver()
const explorer = new Explorer(work, client, patient)
const view = new MapView(explorer, client, patient)
const reasons = new ReasonsDesk(explorer, client)
const bench = new Bench(work, explorer)
// In a thread of their own: the map goes on answering while a study takes its time.
const studies = new BenchStudies(bench, explorer, pageSolver(), nameResult)
const confirmer = new Confirmer(explorer, pageSolver('javascript-lp-solver'))

const bar = new BarDesk(work, explorer)
const improving = new Improving(bar, explorer, client)

const target = document.querySelector('#app')
if (!target) throw new Error('The page has no place for the app')
mount(App, {
  target,
  props: {
    work,
    keeper,
    explorer,
    view,
    reasons,
    bench,
    studies,
    confirmer,
    bar,
    improving,
    files: new BriefDesk(work),
    place: new PagePlace(),
  },
})
