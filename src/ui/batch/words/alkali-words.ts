/** The alkalis as a maker calls them. */
export const ALKALI_NAMES = { naoh: 'Sodium hydroxide', koh: 'Potassium hydroxide' } as const
