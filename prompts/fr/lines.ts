/** Sentences that belong to no single step. */
export const lines = {
  welcome: "{profile}. Dites aide à tout moment. Dites le mot d'urgence à tout moment.",
  inventedProfile: "Avis : ce moteur est inventé, pour l'exercice.",
  phaseStarts: '{phase}.',
  readBackReply: 'Vous avez dit {reply}. Correct ?',
  readBackValue: '{name} : {spoken}. Correct ?',
  andNow: 'Et maintenant ?',
  readBackList: '{count} sur {count} en ordre : {items}. Correct ?',
  readBackCode: 'S P N {spn}, F M I {fmi}. Correct ?',
  fromBus: 'Par le bus :',
  busValue: 'Par le bus : {name} {spoken}.',
  readingsDiffer: "{name} : d'abord {before}, maintenant {now}. Je ne retiens aucune des deux.",
  busDiffers:
    '{name} : vous dites {spoken}, le bus indique {bus}. Regardez encore, et dites ce que vous voyez.',
  readBackDiffers: '{name} : vous dites {spoken}, le bus indique {bus}. Votre valeur est-elle correcte ?',
  lampDiffers: 'Voyant {name} : vous dites {spoken}, le bus indique {bus}. Regardez encore. {name} ?',
  readBackBusCodes: 'Par le bus, codes : {codes}. Correct ?',
  readBackBusNoCodes: 'Par le bus, aucun code. Correct ?',
  stillTurns: 'Le bus indique que le moteur tourne encore : {speed}. Contact coupé, et regardez.',
  busSilent: 'Le bus est muet. On continue à la voix et au clavier.',
  busSensorLost: "Le bus n'indique plus : {name}. Lisez l'instrument.",
  item: '{name} ?',
  unclear: "Je n'ai pas compris.",
  unclearDigits: "Chiffre par chiffre, s'il vous plaît.",
  unclearThrice:
    'Trois fois pas compris. Équipier, dites-le pour moi en commençant par équipier, ou utilisez le clavier.',
  outside: '{name} {spoken} : {limits}. Vérifiez encore.',
  idleHunting: 'Le ralenti pompe. Cherchez la cause, puis relisez-le.',
  idleFalling: 'Le ralenti baisse. Cherchez la cause, puis relisez-le.',
  idleRising: 'Le ralenti monte. Cherchez la cause, puis relisez-le.',
  notCoolYet: '{name} {spoken}, encore chaud. Laissez le bouchon fermé. Vérifiez de nouveau dans {time}.',
  pressureDoesNotFollow: "La pression d'huile ne suit pas le régime. Dites le mot d'urgence, ou relisez-la.",
  boilsAfterKeyOff: 'Le liquide peut bouillir une fois le contact coupé. Laissez refroidir au ralenti.',
  outsideUnjudged: '{name} : {why} Vérifiez encore.',
  stillOutside: "{name} {spoken} n'est pas accepté : {limits}.",
  inside: '{name} {spoken}, {limits}.',
  lampWrong: 'Le voyant {name} devrait être {expected}. Corrigez cela, puis regardez de nouveau. {name} ?',
  notYet: "Compris, pas encore. J'attends.",

  holdStarts: '{title} : {time}.',
  holdHalf: 'Mi-temps : encore {time}.',
  holdTenSeconds: 'Dix secondes.',
  holdDone: '{title} : terminé.',
  timeLeft: 'Encore {time}.',
  noTimer: "Rien n'est chronométré.",
  onHold: 'En pause. Dites continuer pour reprendre.',
  notWhileCritical: "Pas maintenant : seulement le mot d'urgence ou la réponse.",
  goesOn: 'On reprend.',
  cannotGoBack: "D'ici, pas de retour en arrière.",
  cannotSkip: 'Sur ce moteur, cette étape ne peut pas être passée.',
  skipWhy: 'Passer {title} : pourquoi ? Dites non équipé, déjà fait, ou ordre du chef.',
  skipped: 'Passé : {reason}.',
  status: '{phase} : {title}. {open}',
  statusOpen: 'Reste à valider : {gates}.',
  statusNoneOpen: 'Plus rien à valider avant le premier démarrage.',
  help: 'Vous pouvez dire : {choices}.',
  helpAlways: 'Vous pouvez dire : pause, continuer, répéter, en arrière, passer, situation ou temps restant.',
  voiceTooLoud: 'Trop fort, le micro sature. Éloignez le micro, ou baissez son niveau.',
  voiceTooFaint: 'Je vous entends très faiblement. Rapprochez le micro, ou montez son niveau.',
  bayTooNoisy:
    "Trop de bruit pour la voix. Répondez au clavier. Le mot d'urgence compte toujours, mais gardez une touche à portée de main.",
  bayQuietEnough: 'La voix dépasse le bruit de nouveau. Les réponses à la voix comptent.',
  bayLoud: 'Beaucoup de bruit. Dites les nombres chiffre par chiffre, et le reste comme affiché.',
  bayLessLoud: 'Moins de bruit. Dites les nombres comme vous voulez.',
  holdAsked: "Le chef d'atelier demande une pause.",
  stillWaiting: "J'attends toujours.",

  askClear:
    'Équipier : mains, outils et vêtements loin du ventilateur et des courroies ? Dites zone dégagée.',
  clearTooOld: 'Cette réponse est trop ancienne.',
  crankReady: 'Démarreur à mon signal, {burst} au plus. Dites prêt.',
  crankNow: 'Démarreur, maintenant.',
  crankFiveSeconds: 'Cinq.',
  release: 'Lâchez le démarreur !',
  sawPressure: 'Vous avez dit {reply}. Correct ?',
  burstOver: 'Essai terminé. {reply} ou toujours rien ?',
  rest: 'Laissez refroidir le démarreur : {time}.',
  gateClosed: 'Démarreur refusé. Manque : {gates}.',
  engineRuns: 'Le moteur tourne.',

  codeSpn: 'Numéro du paramètre suspect, chiffre par chiffre ?',
  codeFmi: 'Mode de défaillance, de zéro à trente et un ?',
  codeBlocks: 'Code {spn} {fmi}, {meaning} : bloquant. {because}.',
  codeGoOn: 'Code {spn} {fmi}, {meaning} : on peut continuer. {because}.',
  codeWatch: 'Code {spn} {fmi}, {meaning} : surveillé pendant {time}. {because}.',
  codeUnknown:
    "Code {spn} {fmi}, {meaning} : absent du profil, donc bloquant. Le chef d'atelier peut l'accepter.",
  anotherCode: 'Dites code suivant, ou liste terminée.',
  blockingFault:
    "Défaut bloquant ouvert : {fault}. Réparez et relisez les codes. Le chef d'atelier peut accepter un code inconnu.",
  acceptWhy: "Chef d'atelier : pourquoi l'accepter ? Dites non équipé, déjà fait, ou ordre du chef.",

  tooEarly: 'Trop tôt : encore {time} au moins.',
  warmUpLeft: "Environ {time} jusqu'au thermostat, {low} à {high}.",
  warmUpLeftOpen: "Environ {time} jusqu'au thermostat, au moins {low}.",
  warmUpNoted: 'Noté.',
  warmUpAtThermostat:
    "Assez chaud pour le thermostat. Sentez de l'extérieur si la durite supérieure chauffe, jamais près du ventilateur.",
  warmUpStuckOpen: 'La température plafonne trop bas : thermostat bloqué ouvert ?',
  warmUpStuckShut: 'Trop chaud : thermostat bloqué fermé ?',

  stopHeard: 'Stop ! Coupez le contact. Stop !',
  stopCause: 'Stop : {cause} ! Coupez le contact.',
  areAllOff: 'Le moteur est-il éteint et le contact coupé ? Dites tout est éteint.',
  askCause: 'Quelle était la cause ?',
  askDrill: "Entendu. Si c'était l'exercice, dites c'était l'exercice.",
  drillDone: "Le mot d'urgence fonctionne.",
  causeReadBack: 'Cause : {cause}. Correct ?',
  notPossible: "Il n'y a pas de solution avec ces valeurs. Revenez les corriger, ou terminez ici.",
  fuelToAdd: '{practice}. Réservoir tel quel : {risk}. Ajoutez {no1} de numéro un et {no2} de numéro deux.',
  causeKept: 'Cause notée.',
  afterStop: 'À refaire : {steps}. Dites prêt quand tout est réparé, ou terminer la séance.',
  surgery:
    'Danger. Une injection sous la peau est une urgence chirurgicale : appelez les secours tout de suite.',
  hotCap: "Avertissement. N'ouvrez jamais un bouchon chaud : laissez d'abord refroidir.",
  fireCall: 'Danger. Au feu : tout le monde dehors, appelez les pompiers.',
  resumed: "L'outil a redémarré. Je dois savoir ce que fait le moteur.",

  signedOff: 'Démarrage signé. Dossier clos.',
  ended: 'Séance terminée sans signature. Dossier clos.',
} as const satisfies Record<string, string>;

/** A sentence that begins with one of these is a caution (ANSI Z535.6), strongest first. */
export const signalWords = ['danger', 'avertissement', 'attention', 'avis'] as const;

export const phases = {
  job: 'Préparation',
  fill: 'Remplissage',
  prime: 'Amorçage',
  walkRound: 'Tour du moteur',
  noFuelCrank: 'Démarreur sans carburant',
  keyOn: 'Contact',
  firstFire: 'Premier démarrage',
  checks: 'Contrôles moteur tournant',
  warmUp: 'Mise en température',
  sweeps: 'Montées en régime',
  shutdown: 'Extinction',
  signOff: 'Contrôle à froid et signature',
} as const satisfies Record<string, string>;

export const quantities = {
  ambientTemperature: {
    name: "température de l'air",
    leads: ["température de l'air", 'température'],
  },
  coldestNight: { name: 'nuit la plus froide', leads: ['nuit la plus froide', 'température'] },
  altitude: { name: 'altitude', leads: ['altitude'] },
  coolantFreezePoint: { name: 'point de congélation', leads: ['point de congélation', 'congélation'] },
  oilQuantity: { name: 'huile versée', leads: ['huile', 'huile versée'] },
  fuelInTank: { name: 'gazole dans le réservoir', leads: ['gazole', 'dans le réservoir'] },
  biodieselShare: { name: 'biodiesel', leads: ['biodiesel'] },
  primerStrokes: { name: 'coups de pompe', leads: ['coups'] },
  batteryVoltage: { name: 'batterie', leads: ['batterie', 'tension batterie'] },
  chargingVoltage: { name: 'charge', leads: ['charge', 'tension de charge'] },
  crankingVoltage: { name: 'tension minimale', leads: ['tension minimale', 'minimum'] },
  engineSpeed: { name: 'régime de ralenti', leads: ['ralenti', 'régime'] },
  oilPressure: { name: "pression d'huile", leads: ["pression d'huile", 'pression'] },
  coolantTemperature: {
    name: 'liquide de refroidissement',
    leads: ['liquide', 'température du liquide', 'température'],
  },
  suspectParameter: { name: 'S P N', leads: ['numéro'] },
  failureMode: { name: 'F M I', leads: ['mode de défaillance', 'mode'] },
} as const satisfies Record<string, { name: string; leads: readonly string[] }>;

export const gates = {
  stopWordsProved: "mots d'urgence essayés",
  peopleSafe: 'personnes protégées',
  coolantReady: 'liquide de refroidissement',
  oilReady: 'huile',
  fuelReady: 'gazole',
  fuelPrimed: 'circuit de gazole amorcé',
  sensorsConnected: 'capteurs',
  walkRoundDone: 'tour du moteur',
  fuellingDisabled: 'injection neutralisée',
  oilPrimed: 'huile en pression',
  fuellingRestored: 'injection rétablie',
  batteryReady: 'batterie',
  lampsRight: 'voyants',
  heaterHoldDone: "réchauffeur d'admission",
  noBlockingFault: 'codes de défaut',
  secondPersonClear: 'zone dégagée par équipier',
  oilPressureShown: "pression d'huile",
  noLeaks: 'aucune fuite',
  coldLevels: 'niveaux à froid',
  signature: 'signature',
} as const satisfies Record<string, string>;

export const causes = {
  falseAlarm: 'fausse alerte',
  drill: 'exercice',
  coolantLeak: 'fuite de liquide de refroidissement',
  oilLeak: "fuite d'huile",
  fuelLeak: 'fuite de gazole',
  noOilPressure: "pas de pression d'huile",
  noStart: 'le moteur ne démarre pas',
  overspeed: 'surrégime',
  overheating: 'surchauffe',
  faultCode: 'code de défaut',
  smokeOrFire: 'fumée ou incendie',
  someoneHurt: "quelqu'un est blessé",
  looseOrNoise: 'pièce desserrée ou bruit anormal',
  toolRestarted: "l'outil a redémarré",
  other: 'autre cause',
} as const satisfies Record<string, string>;

export const people = {
  technician: 'technicien',
  second: 'équipier',
  supervisor: "chef d'atelier",
} as const satisfies Record<string, string>;

export const inspectPoints = {
  fuelJoints: "raccords de gazole et tuyaux d'injecteurs, papier seulement",
  coolantJoints: 'durites et raccords de refroidissement',
  oilJoints: 'raccords et filtre à huile',
  boots: "manchons d'admission et de suralimentation",
  hiss: 'sifflement ou bruit anormal',
  smellAndSmoke: 'odeur et fumée',
} as const satisfies Record<string, string>;

/** How units are written (short), spoken (long), and what may follow a spoken number. */
export const units = {
  degC: { short: '°C', long: 'degrés Celsius', said: ['degrés', 'degrés celsius', 'celsius'] },
  degF: { short: '°F', long: 'degrés Fahrenheit', said: ['degrés', 'degrés fahrenheit', 'fahrenheit'] },
  m: { short: 'm', long: 'mètres', said: ['mètres'] },
  ft: { short: 'pi', long: 'pieds', said: ['pieds'] },
  litre: { short: 'L', long: 'litres', said: ['litres'] },
  usQuart: { short: 'qt US', long: 'quarts américains', said: ['quarts', 'quarts américains'] },
  usGallon: { short: 'gal US', long: 'gallons américains', said: ['gallons', 'gallons américains'] },
  '%': { short: '%', long: 'pour cent', said: ['pour cent'] },
  count: { short: '', long: '', said: [] },
  V: { short: 'V', long: 'volts', said: ['volts'] },
  rpm: { short: 'tr/min', long: 'tours par minute', said: ['tours', 'tours par minute'] },
  kPa: { short: 'kPa', long: 'kilopascals', said: ['kilopascals'] },
  bar: { short: 'bar', long: 'bars', said: ['bars'] },
  psi: { short: 'psi', long: 'P S I', said: ['psi'] },
  s: { short: 's', long: 'secondes', said: ['secondes'] },
} as const satisfies Record<string, { short: string; long: string; said: readonly string[] }>;

/** Little words for putting sentences together. */
export const words = {
  and: 'et',
  or: 'ou',
  none: 'aucun',
  point: 'virgule',
  decimalMark: ',',
  minus: 'moins',
  second: 'équipier',
  seconds: 'secondes',
  secondsOne: 'une seconde',
  minutes: 'minutes',
  minutesOne: 'une minute',
  one: 'un',
  oneOfTime: 'une',
  exactly: '{value}',
  atLeast: 'au moins {value}',
  atMost: 'au plus {value}',
  between: '{min} à {max}',
  lit: 'allumé',
  dark: 'éteint',
} as const satisfies Record<string, string>;

export const fuels = {
  no2: 'Le numéro deux convient',
  blend: 'Un mélange de numéro un et de numéro deux',
  no1: 'Numéro un pur',
} as const satisfies Record<string, string>;

export const gelling = {
  clear: 'pas de figeage attendu',
  nearCloud: 'proche de son point de trouble',
  belowCloud: 'des paraffines vont se former',
  belowPour: 'il peut figer',
} as const satisfies Record<string, string>;

export const glycols = { ethylene: 'éthylène glycol', propylene: 'propylène glycol' } as const;

/** Why a calculation gives no value, by the code of the issue. */
export const issues: Readonly<Record<string, string>> = {
  missing: 'manque',
  notANumber: "n'est pas un nombre utilisable",
  outOfRange: 'est hors du domaine de la règle',
  contradictory: 'contredit une autre valeur',
  tooLittleData: 'ne suffit pas au calcul',
  noSolution: 'ne laisse aucune solution',
};

/** What each FMI means, from 0 to 31 (SAE J1939-73, appendix A, as public lists give it; our wording). */
export const failureModes: Readonly<Record<string, string>> = {
  0: 'valeur beaucoup trop haute',
  1: 'valeur beaucoup trop basse',
  2: 'signal erratique ou incohérent',
  3: "tension trop haute ou court-circuit à l'alimentation",
  4: 'tension trop basse ou court-circuit à la masse',
  5: 'courant trop faible ou fil rompu',
  6: 'courant trop fort ou court-circuit à la masse',
  7: 'pièce mobile qui ne suit pas ou déréglée',
  8: "fréquence, largeur d'impulsion ou période fausse",
  9: 'message trop fréquent ou trop rare',
  10: 'variation trop rapide',
  11: 'cause inconnue',
  12: 'appareil ou composant défectueux',
  13: 'hors étalonnage',
  14: 'consignes spéciales',
  15: 'valeur un peu haute',
  16: 'valeur haute',
  17: 'valeur un peu basse',
  18: 'valeur basse',
  19: 'donnée du réseau erronée',
  20: 'mesure dérivée vers le haut',
  21: 'mesure dérivée vers le bas',
  22: 'réservé, sens inconnu',
  23: 'réservé, sens inconnu',
  24: 'réservé, sens inconnu',
  25: 'réservé, sens inconnu',
  26: 'réservé, sens inconnu',
  27: 'réservé, sens inconnu',
  28: 'réservé, sens inconnu',
  29: 'réservé, sens inconnu',
  30: 'réservé, sens inconnu',
  31: 'condition présente',
};
