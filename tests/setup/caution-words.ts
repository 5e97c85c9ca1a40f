/** What must stand wherever lye figures stand, by the precautionary statement of the CLP Regulation or the rule it follows. */
export const CAUTION_WORDS: readonly (readonly [string, RegExp])[] = [
  ['P280, goggles and gloves', /goggles.*gloves/iu],
  ['P260, no dust or mist', /breathe no dust or mist/iu],
  ['never alone', /never alone.*somebody within call/iu],
  ['children and animals away', /children and animals away/iu],
  ['hydroxide into water', /hydroxide into water/iu],
  ['vessels', /no aluminium.*no glass/iu],
  [
    'P305+P351+P338, eyes',
    /eyes.*at once.*15 to 20 minutes.*lids held open.*lenses out.*medical/iu,
  ],
  ['P303+P361+P353, skin', /wet clothes.*much running water.*no vinegar or other acid on skin/iu],
  [
    'P301+P330+P331, swallowed',
    /swallowed.*rinse the mouth.*not make anyone vomit.*poison centre/iu,
  ],
  ['who goes first', /local rules, the supplier.s safety data sheet and licensed practice/iu],
]
