/** Screens on which there is one column and the caution is ticked before lye. */
export const PHONE = 'max-width: 600px'
