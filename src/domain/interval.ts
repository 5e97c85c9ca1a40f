/** The least and the most of a quantity, in its own unit. */
export interface Interval {
  readonly min: number
  readonly max: number
}

/** The ends of what lots, certificates and tables give a quantity, by the names that files have for them. */
export interface Ends {
  readonly low: number
  readonly high: number
}
