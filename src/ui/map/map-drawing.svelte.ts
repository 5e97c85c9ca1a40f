import { mapScales, nearestInside, type MapPoint } from '../../charts/map'
import { cornersOf, extentOf, isInFrame, mapFrame, sightsOf } from '../../charts/map-frame'
import { library } from '../../state/library'
import { measureOf } from '../../domain/blend/library'
import type { Explorer } from '../../state/explorer.svelte'
import type { MapView } from '../../state/map-view.svelte'
import { stepsOf } from '../steps'
import { landmarksOn } from './landmarks'

/** What the map shows and where: its frame and scales, and all that its parts draw by. */
export class MapDrawing {
  readonly #explorer: Explorer
  readonly #view: MapView
  /** Of the box that the map fills, px. */
  width = $state(700)
  /** Where the cross stands, in the axes' units; undefined while nobody looks. */
  cross: MapPoint | undefined = $state.raw()

  constructor(explorer: Explorer, view: MapView) {
    this.#explorer = explorer
    this.#view = view
  }

  readonly frame = $derived(mapFrame(this.width))
  readonly land = $derived.by(() => this.#view.land)
  readonly axes = $derived.by(() => this.land?.axes ?? this.#explorer.draft.axes)
  readonly across = $derived(measureOf(library, this.axes[0]))
  readonly up = $derived(measureOf(library, this.axes[1]))
  readonly steps = $derived({ x: stepsOf(this.across), y: stepsOf(this.up) })
  readonly region = $derived(this.land?.region ?? [])
  readonly frontier = $derived(this.land?.frontier ?? [])
  readonly wishes = $derived.by(() => {
    const { wishes } = this.#explorer.draft
    return { x: wishes[this.axes[0]] ?? {}, y: wishes[this.axes[1]] ?? {} }
  })

  /** The blend in hand; none in a clash. */
  readonly present = $derived.by(() => {
    const { study, picked, present } = this.#explorer
    if (study?.answer.status === 'infeasible' && !picked) return undefined
    const [x, y] = this.axes.map((axis) => present?.measures[axis])
    return x === undefined || y === undefined ? undefined : { x, y }
  })
  readonly landmarks = $derived.by(() =>
    landmarksOn(this.axes, this.#explorer.brief, this.#explorer.bar),
  )

  /** What must be seen: the land, or what the shelf can do at all before there is one. */
  readonly #sights = $derived.by(() => {
    const shelf = this.#explorer.study?.shelf
    const [xs, ys] = [shelf?.[this.axes[0]], shelf?.[this.axes[1]]]
    const ofShelf = xs && ys ? cornersOf(xs, ys) : []
    const seen = sightsOf(this.region.length > 0 ? this.region : ofShelf, this.wishes, this.present)
    return seen.length > 0 ? seen : this.landmarks
  })
  /** Whether there is anything to see, so that axes mean something. */
  readonly hasSights = $derived(this.#sights.length > 0)
  readonly scales = $derived.by(() => {
    const { window } = this.#view
    const { width, height, margins } = this.frame
    if (window) return mapScales(cornersOf(window.x, window.y), [0, 0], width, height, margins, 0)
    const places = this.#sights.length > 0 ? this.#sights : [{ x: 0, y: 0 }]
    const { x, y } = this.steps
    return mapScales(places, [x.tick, y.tick], width, height, margins)
  })
  readonly extent = $derived(extentOf(this.scales, this.frame))
  readonly off = $derived(
    this.landmarks.filter((landmark) => !isInFrame(this.px(landmark), this.frame)),
  )

  /** Where a place is drawn, px. */
  px({ x, y }: MapPoint): MapPoint {
    return { x: this.scales.x(x), y: this.scales.y(y) }
  }

  /** The place that is drawn at a point, px. */
  at(x: number, y: number): MapPoint {
    return { x: this.scales.x.invert(x), y: this.scales.y.invert(y) }
  }

  /** Moves the cross to the place nearest to where one points, and asks for the blend there. */
  lookAt(place: MapPoint): void {
    this.cross = nearestInside(place, this.region, this.scales)
    if (this.cross) this.#view.look(this.cross)
  }

  lookAway(): void {
    this.cross = undefined
    this.#view.lookAway()
  }
}
