/** Steps of scales in use in workshops, g. */
export const STEPS = ['0.01', '0.1', '0.5', '1', '2', '5', '10'].map((value) => ({
  value,
  label: `${value} g`,
}))
