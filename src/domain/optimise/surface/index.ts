export { attainableRegion } from './attainable-region'
export {
  surfaceOf,
  type Surface,
  type SurfaceAxis,
  type SurfaceOptions,
  type SurfaceVertex,
} from './blend-surface'
export type { Progress, Watch } from './grow'
export {
  vectorSurface,
  type SurfaceRequest,
  type VectorCorner,
  type VectorFace,
  type VectorSurface,
} from './vector-surface'
