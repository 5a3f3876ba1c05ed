/** What several steps are called when they are asked together. */
export const groups = {
  coolantIn: { title: 'Liquide mélangé et rempli' },
  bottles: { title: 'Liquide purgé, direction au niveau' },
  gradeAndFilter: { title: "Grade et filtre d'huile" },
  fuelAndFilters: { title: 'Gazole et filtres' },
  primer: { title: 'Pompe dure et revissée' },
  hosesBootsBelts: { title: 'Durites, manchons et courroies' },
  oilFeeds: { title: 'Huile aux galeries et au turbo' },
  wiringFasteners: { title: 'Câblage et boulons' },
  coldLevels: { title: 'Liquide et direction, à froid' },
} as const satisfies Record<string, { title: string }>;

/** What a step asks for, in a few words beside the others of its group. */
export const items = {
  'fill.coolantMix': "{concentrate} {glycol}, {water} d'eau<, bon jusqu'à {freeze}>",
  'fill.coolantFilled': 'rempli lentement, purges et chauffage ouverts',
  'fill.coolantBled': 'liquide stable et sans bulles',
  'fill.steeringFull': 'direction au repère froid',
  'fill.oilGrade': '{grades}',
  'fill.oilFilterPreFilled': 'filtre rempli, joint huilé',
  'fill.oilFilterDry': 'filtre à sec, joint huilé',
  'fill.fuelGrade': 'avec {tank} au réservoir, {share} de biodiesel, pour {coldest} : {advice}',
  'fill.firstFilterPreFilled': 'premier filtre rempli, joint huilé',
  'fill.firstFilterDry': 'filtre à gazole à sec, joint huilé',
  'fill.secondFilterPreFilled': 'second filtre rempli, joint huilé',
  'fill.secondFilterDry': 'second filtre à sec, joint huilé',
  'prime.firm': 'elle résiste',
  'prime.screwedHome': 'vissée à fond',
  'walkRound.hoses': 'durites sur leur bourrelet, colliers derrière',
  'walkRound.boots': 'manchons emboîtés',
  'walkRound.belts': 'courroies tendues',
  'walkRound.wiring': 'loin de la chaleur et de ce qui bouge',
  'walkRound.fasteners': 'serrés et marqués',
  'barOver.prelube': "pompée par l'orifice jusqu'à la pression",
  'barOver.turboFeed': 'arrivée du turbo remplie, roue tournée à la main',
  'signOff.coolantLevel': "vase d'expansion",
  'signOff.steeringLevel': 'liquide de direction',
} as const satisfies Record<string, string>;
