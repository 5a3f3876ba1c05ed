/** Sentences that belong to no single step. */
export const lines = {
  welcome: '<{profile}. >Répondez avec les mots de la question, ou dites aide.',
  inventedProfile: 'Avis : moteur inventé.',
  assumedOne: "Une valeur n'est que supposée : {names}.",
  assumedFew: '{count} valeurs ne sont que supposées : {names}.',
  assumedMany: '{count} valeurs ne sont que supposées, dont : {names}. Le rapport les énumère.',
  cutOffKnown:
    "S'il tourne encore : vous savez tous deux fermer son gazole. Pour son air : le volet, ou une planche plate à l'entrée.",
  cutOffAt:
    "S'il tourne encore : {at}. Connu de vous deux, il bouge. Pour son air : le volet, ou une planche plate à l'entrée.",
  phaseStarts: '<{phase}.>',
  readBackReply: '{reply}. Correct ?',
  echo: '{spoken}.',
  echoShown: '<{spoken}.>',
  takenBack: 'Annulé.',
  cannotTakeBack: "Ici, il n'y a pas de valeur à annuler.",
  together: '{reply} ? {items}.',
  togetherNamed: '{reply} ?< {items}.>',
  readBackValue: '<{name} : >{spoken}. Correct ?',
  andNow: 'Encore.',
  highest: 'Le plus haut ?',
  sweepAsk: "Pression d'huile<, {unit}> ?",
  sweepFollow: 'Regardez-la monter.',
  sweepFollowOn: '<Regardez-la monter.>',
  coolantNow: 'Liquide maintenant<, {unit}> ?< Thermostat ouvert, dès que la durite supérieure chauffe.>',
  readBackItem: '{name} : {reply}. Correct ?',
  readBackList: '<{title} : >les {count}. Correct ?',
  readBackCode: 'S P N {spn}, F M I {fmi}. Correct ?',
  fromBus: 'Par le bus :',
  busValue: 'Par le bus : {name} {spoken}.',
  readingsDiffer: "{name} : d'abord {before}, maintenant {now}. Je ne retiens aucune des deux.",
  doubted: '{name} {spoken} ? Il faudrait {limits} : {why}. Regardez encore, et dites ce que vous voyez.',
  doubtedBus:
    'Le bus indique {name} {spoken}. Il faudrait {limits} : {why}. Lisez au cadran, et dites ce que vous voyez.',
  whyBefore: "c'était {before} il y a {time}",
  whyAir: "l'air est à {air}",
  whyRunning: 'il tourne depuis {time}',
  whyStarterDraws: 'un démarreur fait baisser la batterie',
  whyCranked: 'elle tenait {before} au démarreur',
  whyRelief: "le clapet de décharge s'ouvre à {relief}",
  vouchAsk:
    'Deuxième personne : lisez vous-même, si possible à un autre cadran ou thermomètre. {name}, en {unit} ?',
  readFirst: '{reply} ? Alors {name} doit indiquer {limits}. Lisez au cadran, et dites ce que vous voyez.',
  early:
    '{reply} après {time} de démarreur ? Il faut {limits}. Deuxième personne : regardez aussi le cadran. Dites {reply}, ou toujours rien.',
  checkFirst: "Vérifiez d'abord : {title}. Si c'est toujours vrai, dites {reply}. Sinon, dites pas encore.",
  checkValue:
    "Vérifiez d'abord : {name}, c'était {before}. Si c'est toujours vrai, dites {reply}. Sinon, dites la valeur.",
  askDipstick: "Jauge d'huile<, moteur au repos> : bon niveau, huile trop basse, ou huile montée ?",
  topUp: 'Complétez avec la même huile, attendez, regardez de nouveau. Bon niveau ?',
  oilRisen:
    "Danger. Du carburant ou du liquide de refroidissement dans l'huile : ce moteur ne doit plus tourner avant d'avoir trouvé d'où il vient et changé l'huile.",
  busDiffers:
    '{name} : vous dites {spoken}, le bus indique {bus}. Regardez encore, et dites ce que vous voyez.',
  readBackDiffers: '{name} : vous dites {spoken}, le bus indique {bus}. Votre valeur est-elle correcte ?',
  lampDiffers: 'Voyant {name} : vous dites {spoken}, le bus indique {bus}. Regardez encore. {name} ?',
  readBackBusCodes: 'Par le bus, codes : {codes}. Correct ?',
  readBackBusNoCodes: 'Par le bus, aucun code. Correct ?',
  stillTurns: 'Danger. Par le bus il tourne à {speed}. Contact coupé, {cut}',
  heardTurning: "Danger. Je l'entends tourner à environ {speed}. Contact coupé, {cut}",
  heardDiffers:
    "{name} : vous dites {spoken}, à l'oreille c'est {heard}. Regardez encore, et dites ce que vous voyez.",
  heardOverspeed: "Danger. J'entends le moteur à environ {speed}. Regardez son régime maintenant.",
  onlySupervisor: "Seul le chef d'atelier répond ici, au clavier ou du doigt.",
  otherVoice: "Ce n'était pas l'équipier. Équipier : dites-le vous-même, ou utilisez le clavier.",
  busSilent: 'Le bus est muet. On continue à la voix et au clavier.',
  busSensorLost: "Le bus n'indique plus : {name}. Lisez l'instrument.",
  item: '{name} ?',
  unclear: "Je n'ai pas compris.",
  answerLate: 'Trop tard : {title}, pas de réponse en {time}.',
  sayInTime: 'Après chaque essai, répondez en {time}.',
  watchVoltage: 'Équipier : notez la tension minimale de la batterie.',
  pressureInTime: "Pied levé, pas d'éther. Quand il démarre, lâchez, et dites la pression d'huile en {time}.",
  rawWaterAtFired: 'Équipier : la main à la vanne ({at}), ouvrez dès que ça démarre.',
  notMeasuredPrice: 'Pas mesuré. Alors encore une fois : {title}. Surveillez la mesure.',
  noReason: "Ce n'est pas une raison. Dites pourquoi, en quelques mots.",
  outOfRange: '{name} : {limits}.',
  unclearDigits: "Chiffre par chiffre, s'il vous plaît.",
  unclearThrice:
    'Trois fois pas compris. Équipier, dites-le pour moi en commençant par équipier, ou utilisez le clavier.',
  outside: '{name} {spoken} : {limits}. Vérifiez encore.',
  idleHunting: 'Le ralenti pompe. Cherchez la cause, puis relisez-le.',
  idleFalling: 'Le ralenti baisse. Cherchez la cause, puis relisez-le.',
  idleRising: 'Le ralenti monte. Cherchez la cause, puis relisez-le.',
  notCoolYet: '{name} {spoken}, encore chaud. Laissez le bouchon fermé. Vérifiez de nouveau dans {time}.',
  pressureDoesNotFollow:
    "La pression d'huile ne suit pas le régime. Revenez d'abord au ralenti. Puis le mot d'urgence, ou encore une fois.",
  slowerThanOthers:
    "{name} : {value}, plus lent que {count} des {all} démarrages de ce moteur ici< ; d'habitude : {limits}>.",
  fasterThanOthers:
    "{name} : {value}, plus rapide que {count} des {all} démarrages de ce moteur ici< ; d'habitude : {limits}>.",
  higherThanOthers:
    "{name} : {value}, plus haut que {count} des {all} démarrages de ce moteur ici< ; d'habitude : {limits}>.",
  lowerThanOthers:
    "{name} : {value}, plus bas que {count} des {all} démarrages de ce moteur ici< ; d'habitude : {limits}>.",
  forTenDegrees: '{time} pour dix degrés Celsius',
  hotAfterRun:
    "Trop chaud pour un thermostat qui marche. Laissez au ralenti, relisez. Si ça monte, dites le mot d'urgence.",
  boilsAfterKeyOff: 'Le liquide peut bouillir une fois le contact coupé. Laissez refroidir au ralenti.',
  outsideUnjudged: '{name} : {why} Vérifiez encore.',
  stillOutside: "{name} {spoken} n'est pas accepté : {limits}.",
  inside: '<{spoken}, {limits}.>',
  justInside: '{spoken}, tout juste : {limits}.',
  lampWrong: 'Le voyant {name} devrait être {expected}. Corrigez cela, puis regardez de nouveau. {name} ?',
  litWhileWatched: 'Voyant {name} allumé tant que son code est surveillé : je redemanderai.',
  chargeLampLit: 'Voyant de charge allumé : point ouvert. La mesure le dira, aux contrôles.',
  notYet: "Pas encore. J'attends.",

  holdStarts: '<{title} : >{time}.',
  holdHalf: 'Mi-temps< : encore {time}>.',
  holdTenSeconds: 'Dix secondes.',
  holdDone: '<{title} : terminé.>',
  timeLeft: 'Encore {time}.',
  noTimer: "Rien n'est chronométré.",
  onHold: 'En pause. Dites continuer pour reprendre.',
  onHoldRunning: "En pause. Le moteur tourne : dites continuer d'ici {time}, sinon tout est coupé.",
  holdRunsOut: 'Le moteur tourne. Dites continuer : encore {time}.',
  notWhileCritical: "Pas maintenant : seulement le mot d'urgence ou la réponse.",
  goesOn: 'On reprend.',
  cannotGoBack: "D'ici, pas de retour en arrière.",
  cannotSkip: 'Sur ce moteur, cette étape ne peut pas être passée.',
  skipWhy: 'Passer {title} : pourquoi ? Dites non équipé, déjà fait, ou ordre du chef.',
  skipped: 'Passé : {reason}.',
  status: '{phase} : {title}. {open}',
  statusOpen: 'Reste à valider : {gates}.',
  statusNoneOpen: 'Plus rien à valider avant le premier démarrage.',
  help: 'Vous pouvez dire : {choices}. {words}',
  helpAlways:
    'Vous pouvez dire : pause, continuer, répéter, en arrière, passer, situation ou temps restant. {words}',
  voiceTooLoud: 'Trop fort, le micro sature. Éloignez le micro, ou baissez son niveau.',
  voiceTooFaint: 'Je vous entends très faiblement. Rapprochez le micro, ou montez son niveau.',
  bayTooNoisy:
    "Trop de bruit pour la voix. Répondez au clavier. Le mot d'urgence compte toujours, mais gardez une touche à portée de main.",
  bayQuietEnough: 'La voix dépasse le bruit de nouveau. Les réponses à la voix comptent.',
  bayLoud: 'Beaucoup de bruit. Dites les nombres chiffre par chiffre, et le reste comme affiché.',
  bayLessLoud: 'Moins de bruit. Dites les nombres comme vous voulez.',
  secondGone: "L'appareil de l'équipier ne répond plus. Regardez-le. Dites pause si vous ne le voyez pas.",
  secondGoneRunning:
    "Avertissement. L'appareil de l'équipier ne répond plus, et le moteur tourne. Regardez-le. Si vous ne le voyez pas, dites le mot d'urgence.",
  holdAsked: "Le chef d'atelier demande une pause.",
  stillWaiting: "Le moteur tourne. J'attends toujours : {title}.",
  lookForSecond: "Avertissement. Pas de réponse. Technicien : regardez l'équipier, maintenant.",
  lookForTechnician: 'Avertissement. Pas de réponse. Équipier : regardez le technicien, maintenant.',

  askClear:
    'Équipier : mains, outils, vêtements à distance<, loin du ventilateur et des courroies>. Zone dégagée ?',
  clearTooOld: 'Cette réponse est trop ancienne.',
  crankReady: 'À mon signal, {burst} au plus. On peut y aller ?',
  crankNow: 'Démarreur, maintenant.',
  crankFiveSeconds: 'Cinq.',
  release: 'Lâchez le démarreur !',
  burstOver: 'Essai terminé. {reply} ou toujours rien ?',
  rest: 'Le démarreur refroidit : {time}.',
  heatAgain: 'Refroidi : contact enlevé et remis, attendez le voyant de préchauffage.',
  gateClosed: 'Démarreur refusé. Manque : {gates}.',

  disableElectric:
    "Contact coupé, débranchez {at}. L'alimentation reste ouverte et amorcée : la pompe ne doit pas tourner à sec.",
  disableLever: 'Mettez {at} au débit nul et attachez-le.',
  disableSolenoid:
    "Contact coupé, débranchez {at}, qui ferme la crémaillère. L'alimentation reste ouverte et amorcée.",
  disableStopSolenoid:
    "Mettez {at} au débit nul et attachez-le : sans courant son solénoïde ne coupe rien. L'alimentation reste ouverte et amorcée.",
  proveElectric: 'Prise débranchée ({at}), visible, étiquetée, alimentation ouverte.',
  proveLever: 'Tirez à la main ({at}) : il reste au débit nul.',
  proveSolenoid: 'Contact un instant : aucun clic ({at}). Contact coupé de nouveau.',
  orLeaveOpen: '{name} : corrigez et relisez, ou dites point ouvert pour continuer.',
  leftOpen: 'Point ouvert noté.',
  idledLongEnough: 'Assez de ralenti pour des segments neufs. Passez au ralenti accéléré et continuez.',
  notOpenedInTime:
    'Thermostat non vu ouvert à temps : point ouvert. Plus de ralenti ; à voir ouvert en charge.',
  weepMeans:
    "Suintement, humide et sans goutte : du papier au bout d'une baguette, loin du ventilateur. Ni chiffon ni main. Regardez de nouveau.",
  fuelWeepMeans: "Danger. Un suintement de gazole, c'est un jet qui commence : éloignez-vous.",
  unknownWeepMeans: "Danger. Un suintement inconnu, c'est peut-être du gazole : éloignez-vous.",
  leakMeans: 'Une goutte grossit sous pression.',
  sprayMeans: 'Danger. Jet : éloignez-vous, il traverse la peau, et il brûle.',
  hissMeans: "De l'air ou des gaz sortent où ils ne doivent pas.",
  smellMeans: 'Odeur de gazole ou de brûlé.',
  valveNoiseMeans:
    "Bruit de soupapes : courant tant que l'huile n'est pas partout. Il doit passer en quelques minutes.",
  valveNoiseStaysMeans: "Un bruit de soupapes qui reste : pas d'huile à la distribution.",
  knockingMeans: 'Danger. Cognement : un palier, un piston, ou une injection au mauvais moment.',
  squealingMeans: 'Grincement : une courroie glisse, ou un roulement est à sec.',
  whiteSmokeMeans: "Fumée blanche : gazole imbrûlé d'un moteur froid. Elle doit passer en chauffant.",
  whiteSmokeStaysMeans: 'Une fumée blanche qui reste : du liquide dans un cylindre.',
  blueSmokeMeans: 'Fumée bleue : huile passant des segments pas encore rodés. Elle doit diminuer.',
  blueSmokeStaysMeans: 'Une fumée bleue qui reste : huile des segments, des soupapes ou du turbo.',
  blackSmokeMeans: "Fumée noire : trop de gazole ou trop peu d'air. Elle doit passer au ralenti.",
  blackSmokeStaysMeans: "Une fumée noire qui reste : un injecteur, ou de l'air bouché.",
  thickSmokeMeans: 'Danger. Fumée épaisse.',

  codeSpn: 'Numéro du paramètre suspect, chiffre par chiffre ?',
  codeFmi: 'Mode de défaillance, de zéro à trente et un ?',
  codeBlocks: 'Code {spn} {fmi}, {meaning} : bloquant. {because}.',
  codeGoOn: 'Code {spn} {fmi}, {meaning} : on peut continuer. {because}.',
  codeWatch: 'Code {spn} {fmi}, {meaning} : surveillé pendant {time}. {because}.',
  codeUnknown:
    "Code {spn} {fmi}, {meaning} : absent du profil, donc bloquant. Le chef d'atelier peut l'accepter.",
  anotherCode: 'Code suivant, ou liste terminée ?',
  blockingFault:
    "Défaut bloquant ouvert : {fault}. Réparez et relisez les codes. Le chef d'atelier peut accepter un code inconnu.",
  acceptWhy: "Chef d'atelier : pourquoi l'accepter ? Dites non équipé, déjà fait, ou ordre du chef.",

  tooEarly: 'Trop tôt : encore {time} au moins.',
  warmUpBegins: 'Laissez-le chauffer. Thermostat ouvert, dès que la durite haute chauffe.',
  warmUpLeft: "Environ {time} jusqu'au thermostat<, {low} à {high}>.",
  warmUpLeftOpen: "Environ {time} jusqu'au thermostat<, au moins {low}>.",
  warmUpNoted: '<Noté.>',
  warmUpAtThermostat:
    "Assez chaud pour le thermostat. Durite supérieure : au thermomètre infrarouge, la main seulement par l'extérieur, jamais près du ventilateur.",
  warmUpStuckOpen: 'La température plafonne trop bas : thermostat bloqué ouvert ?',
  warmUpStuckShut: 'Trop chaud : thermostat bloqué fermé ?',

  stopHeard: 'Stop ! Coupez le contact. Stop !',
  stopCause: 'Stop : {cause} ! Coupez le contact.',
  stopHeardCut: 'Danger. Contact coupé, {cut}',
  stopCauseCut: 'Stop : {cause} ! Contact coupé, {cut}',
  cutAt:
    "{at}, maintenant. S'il tourne encore, bouchez son air. Restez hors du plan du turbo, du ventilateur et du volant.",
  cutKnown:
    "fermez son gazole, maintenant. S'il tourne encore, bouchez son air. Restez hors du plan du turbo, du ventilateur et du volant.",
  cutByHand:
    "{at} à la main, maintenant : son solénoïde a besoin de courant. S'il tourne encore, bouchez son air. Restez hors du plan du turbo, du ventilateur et du volant.",
  cutByHandOr:
    "{at} à la main, maintenant : son solénoïde a besoin de courant. Ou : {other}. S'il tourne encore, bouchez son air. Restez hors du plan du turbo, du ventilateur et du volant.",
  stillRunning: 'Danger. Il tourne encore : {cut}',
  starterHangs: "Danger. Le démarreur ne lâche pas : débranchez la batterie. S'il démarre : {cut}",
  notOffYet: 'Coupez le contact, maintenant.',
  areAllOff: 'Moteur et contact : tout est éteint, ou il tourne encore ?',
  askCause: 'Quelle était la cause ?',
  askCaller: "Équipier : c'est vous qui avez appelé. Fausse alerte ? Sinon, dites faux.",
  onlyCaller: "C'est l'équipier qui a appelé : lui seul peut l'annuler.",
  askDrill: "Entendu. C'était l'exercice ?",
  askNextDrill: "Entendu. Équipier : le mot d'urgence, maintenant. {words}",
  drillDone: '<Il fonctionne.>',
  causeReadBack: 'Cause : {cause}. Correct ?',
  notPossible: "Il n'y a pas de solution avec ces valeurs. Revenez les corriger, ou terminez ici.",
  noMix: 'aucun mélange permis ne tient cette nuit-là',
  noGrade: 'aucun grade permis ne convient à cette nuit-là',
  noFuel: "trop de l'ancien gazole pour cette nuit-là : vidangez-en, ou prenez un numéro un plus froid",
  fuelToAdd: '<{practice}. Réservoir tel quel : {risk}. >Ajoutez {no1} de numéro un, {no2} de numéro deux',
  causeKept: 'Cause notée.',
  afterStop: 'À refaire : {todo}. Dites on peut y aller quand tout est réparé, ou terminer la séance.',
  toDoMany: '{count} étapes, la première {first}< : {steps}>',
  surgery:
    'Danger. Appelez les secours maintenant. Du gazole sous la peau : dites injection ; chirurgie, même minuscule.',
  handsIn: "Avertissement. Clé retirée, batterie débranchée avant d'y mettre les mains.",
  hotCap:
    "Avertissement. Clé retirée, batterie débranchée avant d'y mettre les mains. N'ouvrez jamais un bouchon chaud, jamais de liquide froid dans un moteur chaud.",
  noStartingFluid:
    "Avertissement. Clé retirée, batterie débranchée avant d'y mettre les mains. Pas d'éther : près d'un préchauffage il explose dans l'admission.",
  hydraulicLock:
    "Danger. Pas de démarreur. Du liquide dans un cylindre tord les bielles. Clé retirée, batterie débranchée. Injecteurs ou bougies déposés, virez à la main. N'ouvrez jamais un bouchon chaud.",
  knockingEnds:
    "Danger. Ce moteur ne doit plus démarrer avant que son filtre soit découpé, son carter inspecté ou son calage d'injection vérifié, et que le chef d'atelier l'ait libéré.",
  fireCall:
    'Danger. Si ça brûle : tout le monde dehors, appelez les pompiers. Gazole et batterie coupés, si vous y arrivez sans danger.',
  railHolds:
    "Avertissement. Clé retirée, batterie débranchée avant d'y mettre les mains. La rampe garde sa pression contact coupé : n'ouvrez aucun tuyau pendant dix minutes, ou selon le constructeur.",
  resumed: "L'outil a redémarré. Je dois savoir ce que fait le moteur.",

  signedOff: 'Démarrage signé. Dossier clos.',
  ended: 'Séance terminée sans signature. Dossier clos.',
  endedBarred:
    "Séance terminée sans signature. Dossier clos. Une fois ce moteur libéré par le chef d'atelier, commencez une nouvelle séance.",
} as const satisfies Record<string, string>;

/** A sentence that begins with one of these is a caution (ANSI Z535.6), strongest first. */
export const signalWords = ['danger', 'avertissement', 'attention', 'avis'] as const;

export const phases = {
  job: 'Préparation',
  fill: 'Remplissage',
  prime: 'Amorçage',
  walkRound: 'Tour du moteur',
  barOver: 'Rotation à la main',
  noFuelCrank: 'Démarreur sans carburant',
  keyOn: 'Contact',
  firstFire: 'Premier démarrage',
  firstRun: 'Première marche courte',
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
  heaterHoldDone: 'préchauffage',
  rawWaterShut: 'eau brute fermée',
  regenerationOff: 'régénération bloquée',
  noBlockingFault: 'codes de défaut',
  secondPersonClear: 'zone dégagée par équipier',
  turnsFreely: 'tourné à la main',
  batteryUnderLoad: 'batterie en charge',
  engineFired: 'moteur en marche',
  nothingAmiss: 'yeux et oreilles',
  firstRunSeen: 'tour fait après la première marche',
  restarted: 'moteur de nouveau en marche',
  oilPressureShown: "pression d'huile",
  noLeaks: 'aucune fuite',
  noLeaksAfter: 'aucune fuite après la marche',
  coolEnough: 'assez froid pour ouvrir',
  coldLevels: 'niveaux à froid',
  signature: 'signature',
} as const satisfies Record<string, string>;

export const causes = {
  falseAlarm: 'fausse alerte',
  drill: 'exercice',
  coolantLeak: 'fuite de liquide de refroidissement',
  coolantInCylinder: 'liquide dans un cylindre',
  oilLeak: "fuite d'huile",
  fuelLeak: 'fuite de gazole',
  noOilPressure: "pas de pression d'huile",
  noStart: 'le moteur ne démarre pas',
  binds: 'ne tourne pas librement',
  overspeed: 'surrégime',
  overheating: 'surchauffe',
  faultCode: 'code de défaut',
  smokeOrFire: 'fumée ou incendie',
  someoneHurt: "quelqu'un est blessé",
  knocking: 'cognement',
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
  anyLeak: 'fuites, vues de loin',
  noise: 'bruit',
  smoke: 'fumée',
  fuelJoints: "raccords de gazole et tuyaux d'injecteurs",
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
  quoted: '«\u00a0{text}\u00a0»',
  emergencyWords: "Mots d'urgence : {list}.",
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
