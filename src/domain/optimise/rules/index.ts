export {
  alternativesUnderRules,
  type RuledAlternatives,
  type RuledAlternativesOrder,
} from './alternatives'
export { DEFAULT_TIME_MS, type SearchBudget } from './allowance'
export { UndecidedSearch } from './answer'
export {
  attainableUnderRules,
  reachUnderRules,
  type RuledAttainable,
  type RuledRange,
} from './attainable'
export type { Gap } from './best'
export { type BriefRules, type Requirement, statesRules, withoutRules } from './brief-rules'
export { frontierUnderRules, type RuledFrontier, type RuledVertex, type Unproved } from './frontier'
export { landUnderRules } from './land'
export {
  GRID_SIZES,
  type RuledTerrain,
  type RuledTerrainOptions,
  type TerrainEnd,
  terrainUnderRules,
} from './terrain'
export { sampleUnderRules } from './sample'
export type { RegionEnd } from './terrain-edge'
