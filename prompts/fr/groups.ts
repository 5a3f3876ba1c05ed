/** What several steps are called when they are asked together. */
export const groups = {
  fuelFilters: { title: 'Filtres à gazole' },
  primer: { title: 'Pompe dure et revissée' },
  hosesBootsBelts: { title: 'Durites, manchons et courroies' },
  oilFeeds: { title: 'Huile aux galeries et au turbo' },
  wiringFasteners: { title: 'Câblage et boulons' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.firstFilterPreFilled': 'premier filtre à gazole rempli, joint huilé, monté',
  'fill.firstFilterDry': 'premier filtre à gazole sec, joint huilé, monté',
  'fill.secondFilterPreFilled': 'second filtre à gazole rempli, joint huilé, monté',
  'fill.secondFilterDry': 'second filtre à gazole sec, joint huilé, monté',
  'prime.firm': 'pompe dure',
  'prime.screwedHome': 'pompe revissée',
  'walkRound.hoses': 'durites sur leur bourrelet, colliers derrière et serrés',
  'walkRound.boots': 'manchons en place et serrés',
  'walkRound.belts': 'courroies dans leurs gorges et tendues',
  'walkRound.wiring': 'câblage loin de la chaleur et de ce qui bouge',
  'walkRound.fasteners': 'boulons serrés et marqués',
  'barOver.prelube': "huile pompée par l'orifice jusqu'à la pression",
  'barOver.turboFeed': 'arrivée du turbo huilée et roue tournée à la main',
} as const satisfies Record<string, string>;
