import type { FindingSentences } from '../../record/index.ts';
import type { ReportWords } from './en.ts';
import { frenchSources } from './fr-sources.ts';

const plural = (amount: number, one: string, many: string) => `${amount} ${amount < 2 ? one : many}`;

const findings: FindingSentences = {
  chain: {
    notOurs: () => "Ce fichier n'est pas un dossier de ce programme.",
    torn: ({ line }) =>
      `La ligne ${line} est coupée : l'écriture a été interrompue ; ce qui la précède (${plural(line - 1, 'ligne', 'lignes')}) est intact.`,
    altered: ({ line }) =>
      `La ligne ${line} a été modifiée : son contenu n'est pas celui que dit son empreinte.`,
    clockBack: ({ line, monoMs, beforeMs }) =>
      `La ligne ${line} remonte le temps : son horloge continue indique ${monoMs} ms, moins que les ${beforeMs} ms de la ligne ${line - 1}.`,
    duplicated: ({ line, twinLine }) =>
      `La ligne ${line} est en double : la même entrée se trouve à la ligne ${twinLine}.`,
    renumbered: ({ line, seq }) =>
      `La ligne ${line} a été ajoutée ou réécrite : elle porte le numéro ${seq}, que la ligne ${seq + 1} a déjà.`,
    putIn: ({ line, rightfulLine }) =>
      `La ligne ${line} a été ajoutée : l'entrée qui doit s'y trouver est à la ligne ${rightfulLine}.`,
    reordered: ({ line, rightfulLine }) =>
      `La ligne ${line} n'est pas à sa place : l'entrée qui doit s'y trouver est à la ligne ${rightfulLine}.`,
    missing: ({ line, expected, seq }) =>
      `Avant la ligne ${line}, il manque ${plural(seq - expected, 'entrée', 'entrées')} : le numéro ${expected} devrait s'y trouver, et c'est le ${seq}.`,
    rehashed: ({ line }) =>
      `La ligne ${line} a été modifiée et son empreinte refaite : la ligne ${line + 1} a été écrite après une autre ligne ${line}.`,
    cutOff: ({ line }) =>
      `Le dossier s'achève à la ligne ${line - 1} sans l'empreinte du rapport : des lignes manquent à la fin, ou le rapport est celui d'un autre dossier.`,
  },
  remarks: {
    wallClockJump: ({ line, jumpS }) =>
      `À la ligne ${line}, l'horloge de l'ordinateur a été ${jumpS > 0 ? 'avancée' : 'reculée'} de ${Math.abs(jumpS).toFixed(1).replace('.', ',')} s.`,
    continued: ({ line, more }) =>
      `Le rapport a été fait à la ligne ${line - 1} ; le dossier a continué ensuite (${plural(more, 'ligne', 'lignes')}).`,
  },
  signature: {
    otherKeyId: "sa clé n'est pas celle que dit son identifiant",
    altered: 'elle a été modifiée, ou faite avec une autre clé',
    otherRecord: 'elle a été faite pour un autre dossier, ou ce dossier a été modifié ou continué depuis',
  },
};

const ruleSentences: ReportWords['ruleSentences'] = {
  'plausible-range': 'La valeur doit seulement être possible : elle sert aux calculs.',
  'ashrae-ethylene-glycol':
    'Le mélange doit tenir la nuit la plus froide avec sa marge, sans être plus fort que ce que permet le constructeur.',
  'ashrae-propylene-glycol':
    'Le mélange doit tenir la nuit la plus froide avec sa marge, sans être plus fort que ce que permet le constructeur.',
  'oil-capacity': "On verse autant d'huile que le moteur en contient.",
  'biodiesel-share': "Il n'y a pas plus de biodiesel dans le carburant que le moteur n'en supporte.",
  'cranking-voltage-floor':
    'Au démarreur, la batterie ne descend pas sous la tension que permet sa température.',
  'lead-acid-rest-voltage':
    "Au repos, la batterie montre la tension de la charge demandée, et pas plus qu'une batterie au plomb ne peut.",
  'charging-window': "L'alternateur tient la batterie à sa tension de charge pour cette température.",
  'idle-trend': 'Le ralenti est dans sa plage, sans pomper ni dériver.',
  'idle-range': 'Le ralenti est dans sa plage.',
  'idle-governed': "Un moteur qui tourne bien trop vite au ralenti n'est pas régulé : on l'arrête.",
  'oil-pressure-floor':
    "La pression d'huile n'est pas sous le minimum pour ce régime et cette température d'huile.",
  'relief-valve-holds':
    'Là où le clapet de décharge tient la pression, ce qui est au-dessous monte jusque-là.',
  'oil-pressure-follows-speed': "La pression d'huile monte avec le régime.",
  'coolant-boiling': "Le liquide n'est pas plus chaud que le moteur ne le permet, ni près de bouillir ici.",
  'thermostat-opens': "Le liquide a atteint la température d'ouverture du thermostat.",
  'heat-soak-boil-margin':
    'Contact coupé, la chaleur du métal ne fait pas bouillir le liquide sous son bouchon.',
  'cap-cool-enough': "On n'ouvre un bouchon qu'une fois le liquide refroidi.",
  'thermostat-regulates':
    "Chaud et sans charge, le liquide n'est pas plus chaud que ne le permet un thermostat qui marche.",
  'idle-swing': "Le ralenti, suivi une demi-minute, n'oscille pas plus qu'il ne peut.",
};

/** The frame of a report in French, in the words of `prompts/fr`: dossier, séance, relevé, point ouvert. */
export const fr: ReportWords = {
  locale: 'fr-FR',
  firstOfMonth: '1er',
  dateTime: '{date} à {time} UTC',
  unitGap: '\u00a0',
  quoted: '« {text} »',

  findings,
  via: {
    voice: 'à la voix',
    keys: 'au clavier',
    touch: 'au toucher',
    bus: 'par le bus du véhicule',
    tool: "par l'outil",
  },
  unclear: {
    nothingRecognized: 'une voix, mais aucun mot',
    outOfGrammar: 'pas une réponse à cette question',
    lowConfidence: 'trop incertain',
    outOfRange: 'hors plage',
    tooLong: 'trop long',
    farAway: 'trop loin du microphone',
    deniedAtReadBack: 'démenti à la relecture',
    contradicted: 'un autre nombre que celui qui est relu',
    notExpected: 'pas attendu',
    notYetAsked: 'avant la question',
  },
  decisions: { blocks: 'bloquant', mayGoOn: 'on peut continuer', watch: "surveillé jusqu'à disparition" },
  whyNotCarriedOut: {
    notAtEngine: "la personne n'est pas auprès du moteur",
    toolSpoke: "l'outil disait lui-même ce mot",
  },
  why: {
    idleHunting: 'le ralenti pompe',
    idleFalling: 'le ralenti baisse',
    idleRising: 'le ralenti monte',
    notCoolYet: 'encore chaud',
    coolOnce: 'froid à un seul relevé',
    pressureDoesNotFollow: 'elle ne suit pas le régime',
    boilsAfterKeyOff: 'il peut bouillir une fois le contact coupé',
    hotAfterRun: 'trop chaud pour un thermostat qui marche',
  },
  keyOwners: { bay: 'du poste', supervisor: "du chef d'atelier" },
  triggers: {
    clock: 'temps écoulé',
    reply: 'par une réponse',
    value: 'par une valeur',
    reading: 'par un relevé hors limites',
    unclear: 'pas de réponse claire à temps',
  },
  sources: frenchSources,
  ruleSentences,
  holdKinds: {
    hold: 'attente, au moins',
    rest: 'repos du démarreur, au moins',
    burst: 'démarreur, au plus',
    watch: 'surveillance, au plus',
  },
  engineSpeed: 'régime moteur',

  between: '{min} à {max}',
  atLeast: 'au moins {value}',
  atMost: 'au plus {value}',
  margins: {
    toSpare: 'marge {amount}',
    tooLow: 'trop bas de {amount}',
    tooHigh: 'trop haut de {amount}',
    beyond: 'hors limites de {amount}',
    onLimit: 'sur la limite',
    hardly: 'presque rien',
  },
  onDevice: "{means}, sur l'appareil {device}",

  title: 'Premier démarrage : rapport',
  fileTitle: 'Premier démarrage : {vehicle}',
  unknownVehicle: 'véhicule inconnu',
  recordFoot: 'Dossier {hash}',
  page: 'Page {page} sur {of}',
  lettersLacking:
    'Certaines lettres sont remplacées ci-dessus par des cases : la police de ce PDF ne les a pas. Le rapport HTML les montre.',
  invented: "Le moteur de ce rapport est inventé, pour l'exercice.",
  rehearsal: 'Une répétition : un modèle a tenu lieu de moteur.',

  trust: {
    altered: "NON VÉRIFIÉ : ce dossier n'est pas tel qu'il a été écrit. {fault}",
    noEntry: 'Il ne contient aucune entrée complète.',
    onlyBefore: {
      one: "Le rapport ne montre que {n} entrée, d'avant le défaut. Il ne prouve rien de ce qui suit.",
      many: "Le rapport ne montre que les {n} entrées d'avant le défaut. Il ne prouve rien de ce qui suit.",
    },
    notVerified: 'NON VÉRIFIÉ : {sentence}',
    notConfirmed: 'NON CONFIRMÉ : {fault}',
    verified: {
      one: "Vérifié : l'unique entrée est enchaînée telle qu'elle a été écrite.",
      many: "Vérifié : les {n} entrées sont enchaînées telles qu'elles ont été écrites.",
    },
    verifiedAndSigned: {
      one: "Vérifié : l'unique entrée est enchaînée telle qu'elle a été écrite, et signée avec la clé {owners}.",
      many: "Vérifié : les {n} entrées sont enchaînées telles qu'elles ont été écrites, et signées avec la clé {owners}.",
    },
    and: ' et ',
    signatureFails: 'La signature {owner} (clé {keyId}) ne tient pas : {why}.',
  },

  replay: {
    noHeader:
      "Le dossier ne commence pas comme une séance de cette version : rien de ce qu'il contient n'a pu être rejoué.",
    impossible: 'La procédure ne peut pas être rejouée à partir de ce dossier : {why}',
    differs:
      'Rejoués, les événements du dossier ne mènent pas à la ligne {line} : {what}. Soit une autre version de la procédure a écrit ce dossier, soit il a été modifié et enchaîné à nouveau.',
    passedUnmet:
      "À la ligne {line}, la condition « {gate} » est validée à {step}, alors que, d'après le jugement qui précède, la limite n'était pas tenue.",
    nothingFollows: "aucun « {recorded} » n'en découle",
    otherState: 'ils mènent à {leads}, pas à {recorded}',
    otherNote: 'ils mènent à « {leads} », pas à « {recorded} »',
    otherMember: 'son {member} est autre',
    otherOutcome: 'ils mènent à {leads}, pas à « {recorded} »',
    noteLacking: '« {leads} » devrait la précéder',
    olderVersion:
      'Une version antérieure de ce programme a écrit ce dossier (vocabulaire {version}), selon une autre procédure : il est présenté tel quel, sans être rejoué.',
    newerVersion:
      'Une version plus récente de ce programme a écrit ce dossier (vocabulaire {version}) ; établissez le rapport avec elle.',
  },

  outcome: {
    unconfirmed: 'Selon le dossier, non confirmé : {text}',
    nothing: "Rien ne s'est passé : le dossier ne contient aucune étape d'un démarrage.",
    signedOff: 'Démarrage signé après {time} : {facts}.',
    allGatesMet: { one: '{n} condition validée, sur {n}', many: 'toutes les conditions validées ({n})' },
    gatesNotMet: { one: '{n} condition NON validée', many: '{n} conditions NON validées' },
    onlyDrills: 'aucun arrêt hors exercices',
    stops: { one: "{n} arrêt d'urgence", many: "{n} arrêts d'urgence" },
    nothingOpen: 'aucun point ouvert',
    openItems: { one: '{n} point ouvert', many: '{n} points ouverts' },
    ended: 'Séance terminée sans signature après {time}, {place}{cause}. {ran}',
    stopped: 'Arrêt sans reprise après {time}, {place}{cause}. {ran}',
    brokenOff: "Inachevé : le dossier s'interrompt après {time}, {place}. {ran}",
    beforeFirstStep: 'avant la première étape',
    inPhase: 'en phase {n} sur {of}, {phase}',
    cause: ' : {cause}',
    noCause: 'aucune cause donnée',
    ranUnknown: 'On ne peut pas dire si le moteur a tourné.',
    turnedUnexpectedly: 'Un régime moteur a été relevé, mais à aucune étape où le moteur tourne.',
    didNotRun: "Le moteur n'a pas tourné.",
    ranFor: 'Le moteur a tourné {time}.',
  },

  glance: {
    ran: 'Moteur tournant',
    ranUnknown: 'on ne peut pas le dire',
    ranFrom: '{time}, dès {from}',
    ranNowhere: 'à aucune étape',
    gates: 'Conditions validées',
    gatesOf: '{met} sur {all}',
    stops: "Arrêts d'urgence",
    stopsAndDrills: { one: '{stops} (et {n} exercice)', many: '{stops} (et {n} exercices)' },
    faults: 'Codes de défaut',
    skips: 'Étapes passées',
    misheard: 'Pas compris du premier coup',
    openItems: 'Points ouverts',
    signature: 'Signature',
    signatureProved: 'prouvée',
    signatureUnproved: 'non prouvée',
  },

  job: {
    unknown:
      'Le dossier ne commence pas comme une séance de cette version : on ne peut dire ni le véhicule, ni les personnes, ni le profil du moteur.',
    vehicle: 'Véhicule',
    engine: 'Moteur',
    profile: 'Profil',
    inventedProfile: "{name} (inventé, pour l'exercice)",
    began: 'Début',
    lasted: 'Durée',
    lastedTime: '{time} ({clock})',
    details: {
      serial: 'Numéro de série ou VIN',
      hours: 'Heures',
      oilUsed: 'Huile employée',
      coolantUsed: 'Liquide employé',
      filterParts: 'Références des filtres',
    },
  },

  origins: {
    title: "D'où viennent les valeurs du moteur",
    count: '{n} {from}',
    from: {
      plate: 'de la plaque',
      manual: 'du manuel',
      measured: 'mesurées',
      seen: 'vues sur le moteur',
      computed: 'calculées',
      assumed: 'supposées',
    },
    none: "Rien n'a été supposé.",
    assumed: 'supposé : {name}',
    accepted: 'supposé : {name}, accepté par {by}',
  },

  timeLine: {
    title: 'Déroulement',
    note: "Temps de la séance. Moteur : ambre tant que le démarreur l'entraînait, vert tant qu'il tournait.",
    alt: '{reached} phases sur {all} en {time}.',
    notReached: 'non atteinte',
    engine: 'Moteur entraîné, puis tournant',
    stops: 'Arrêts (évidés : exercices)',
    held: 'En pause',
    restarted: "Redémarrage de l'outil",
  },

  open: {
    title: 'Points ouverts',
    gate: 'Condition non validée : {gate}',
    gates: '{n} conditions non validées : {gates}',
    skip: 'Étape passée : {step} ({reason})',
    fault: "Code accepté par le chef d'atelier : SPN {spn} FMI {fmi} ({reason})",
    reopened: 'À refaire : {step}',
    left: 'Laissé ouvert : {step}',
    leftWith: 'Laissé ouvert : {step} ({what})',
    barred: 'Ne pas démarrer : {why}',
    none: 'Aucun point ouvert.',
    noneConfirmed: "Le dossier n'en nomme aucun ; cela n'a pas pu être confirmé.",
    retorque: 'Liste de resserrage',
    retorqueNote: {
      one: '{done} point sur {n} confirmé, à froid.',
      many: 'Points confirmés, à froid : {done} sur {n}.',
    },
    torqued: '{name} : serré au couple',
    notTorqued: '{name} : À FAIRE',
  },

  gates: {
    title: 'Conditions et relevés',
    note: 'Les heures sont en temps de séance. Les numéros entre crochets renvoient aux règles, plus bas.',
    none: 'Aucune condition atteinte.',
    reading: 'Relevé',
    at: 'Temps',
    value: 'Valeur',
    limit: 'Limite',
    margin: 'Marge',
    rule: 'Règle',
    holdUp: 'Relevés qui retiennent le travail',
    holdUpNote:
      "Ils n'ouvrent aucune condition ; le travail n'a continué qu'une fois dans leurs limites, ou s'est arrêté.",
    figures: 'Chiffres pour les calculs',
    figuresNote: 'Météo, lieu et quantités : les limites en sont tirées.',
    proved: 'Prouvé : {list}.',
    provedBy: '{person} {means} à {time}',
    held: 'comparé à la limite : {value}',
    met: 'validée à {time}, {person}',
    notMet: 'NON VALIDÉE',
    confirmed: 'Confirmé : {steps}.',
    missing: 'Manque : {steps}.',
    severalAlike: '{n} relevés, tous {value}',
    several: '{n} relevés, {lowest} à {highest}',
    moreOutside: {
      one: '{n} autre relevé hors limites ; tous sont dans les exports JSON et CSV',
      many: '{n} autres relevés hors limites ; tous sont dans les exports JSON et CSV',
    },
    notAccepted: '{quantity} : valeur NON acceptée',
    notAcceptedWhy: '{quantity} : valeur NON acceptée, {why}',
  },

  plots: {
    title: 'Relevés dans le temps et limites',
    none: "Aucun relevé n'a été fait.",
    note: 'Tirets : limites ; fond rouge : hors limites. Bandes en fond : phases, par leur numéro dans le déroulement.',
    once: 'Relevé une fois : la barre grise est ce que permettent les limites',
    valueAt: '{value} à {time}',
    labelled: '{label} : {text}',
    quantityIn: '{quantity}, {unit}',
    alt: { one: '{quantity} : {n} relevé', many: '{quantity} : {n} relevés' },
    altAllInside: '{readings}, aucun hors limites.',
    altOutside: '{readings}, dont {bad} hors limites.',
    pressure: "Pression d'huile ({unit}) selon le régime ({speedUnit})",
    pressureAlt: {
      one: "Pression d'huile à {n} régime, avec la pression minimale admise.",
      many: "Pression d'huile à {n} régimes, avec la pression minimale admise à chacun.",
    },
  },

  stops: {
    title: "Arrêts d'urgence et leurs causes",
    none: "Personne n'a demandé l'arrêt.",
    step: 'Étape',
    called: 'Demandé',
    cause: 'Temps et cause',
    after: 'Ensuite',
    onlyDrills: "Personne n'a demandé l'arrêt, sauf pour l'exercice.",
    head: '{time} : {cause}',
    inStep: 'Étape : {step}. Demandé : {called}.',
    byReading: '{quantity} {value}, limite {limit}',
    renamed:
      'La séance a constaté : {found}. On a nommé ensuite : {cause}. Ce que {found} met en doute est à refaire quand même.',
    drills: { one: "{n} exercice du mot d'urgence", many: "{n} exercices du mot d'urgence" },
    byBus: 'la séance elle-même, par le bus du véhicule',
    by: '{person}, {via}',
    noCause: 'non donnée',
    drillHeard: 'entendu ; repris à {time}',
    wentOn: 'repris à {time}',
    notGoneOn: 'sans reprise',
    again: 'À refaire : {steps}.',
  },

  doubts: {
    title: 'Mis en question comme guère possible',
    note: "Ce qui ne pouvait être vrai d'après ce qu'on savait n'a pas été retenu sur la parole d'une seule personne.",
    said: 'Dit ou affiché',
    expected: 'Ce que ce pouvait être',
    became: 'Suite donnée',
    value: '{what}, {value}',
    notTaken: 'pas retenu',
    vouched: 'retenu : lu aussi par : {person}',
  },

  besideOthers: {
    title: 'À côté des démarrages précédents de ce moteur dans cet atelier',
    note: "Dit seulement : rien n'en dépend, aucune étape ne s'ouvre ni ne se ferme pour cela.",
    value: 'Ce démarrage',
    usual: "D'habitude ici",
    place: 'Parmi eux',
    middle: 'au-dessous de {above}, au-dessus de {below} sur {all}',
    unlike: "à l'écart : au-dessous de {above}, au-dessus de {below} sur {all}",
  },

  faults: {
    title: 'Codes de défaut',
    none: "Aucun code de défaut n'a été lu.",
    code: 'Code',
    what: 'Signification',
    story: 'Suite donnée',
    judged: '{time} {step} : {decision}',
    accepted: "{time} accepté par le chef d'atelier : {reason}",
    cleared: '{time} donné pour disparu',
    endUnknown: "on ne peut pas dire s'il était là à la fin",
    atEnd: 'pas relu comme disparu à la fin',
    gone: 'absent de la dernière lecture des codes',
  },

  skips: {
    title: 'Étapes passées',
    none: "Aucune étape n'a été passée.",
    reason: 'Motif',
    by: 'Par',
  },

  misheard: {
    title: 'Mal compris, puis rectifié',
    none: 'Tout a été compris du premier coup.',
    heard: 'Entendu',
    why: 'Pourquoi écarté',
    repairedBy: 'Ce qui a compté ensuite',
    nothingHeard: '(rien)',
    folded: { one: '{n} fois, {repaired}.', many: '{n} fois, {repaired}.' },
    allRepaired: 'rectifié à chaque fois dans la même étape',
    notRepaired: {
      one: 'dont {n} sans réponse retenue ensuite',
      many: 'dont {n} sans réponse retenue ensuite',
    },
    repaired: '{text} à {time}',
    nothing: 'rien',
  },

  ear: {
    title: "Le moteur à l'oreille",
    note: "Ce que le micro a entendu du moteur. Rien n'est jugé d'après lui, et son silence ne dit rien du moteur.",
    speed: "Régime à l'oreille, {unit} ; chaque changement, et deux fois par minute ce qui reste",
    alt: { one: "{n} régime à l'oreille.", many: "{n} régimes à l'oreille." },
    happened: 'Entendu',
    at: 'Régime',
    microphone: "Par l'appareil",
    what: {
      cranking: 'Lancé',
      fired: 'Démarré',
      running: 'Tourne',
      stalled: 'Calé',
      lost: "On ne l'entend plus",
      hunting: "Oscille de {swing} de part et d'autre, toutes les {period} s",
      overspeed: 'Trop vite : annoncé',
      changed: 'Sonne autrement que dans sa première minute : {db} dB entre {from} et {to} Hz',
    },
  },

  voices: {
    title: 'Qui a parlé',
    note: "Une voix est comparée à ce que son propriétaire a dit plus tôt dans cette session. Elle peut faire refuser une réponse, jamais l'accorder. Rien d'une voix n'a été gardé.",
    person: 'Interrogé',
    answers: 'Réponses parlées',
    own: 'De sa voix',
    others: "D'une autre voix",
    unsure: 'Pas sûr',
    refused: {
      one: "{n} réponse a été refusée : demandée à l'équipier, elle est venue de la voix du technicien.",
      many: "{n} réponses ont été refusées : demandées à l'équipier, elles sont venues de la voix du technicien.",
    },
    folded: {
      one: '{n} réponse parlée, par qui et de quelle voix.',
      many: '{n} réponses parlées, par qui et de quelle voix.',
    },
    said: 'Dit',
    askedOf: 'Demandé à',
    voice: 'Voix',
    notSure: 'pas sûr',
    neither: "ni l'un ni l'autre",
    notTaken: '{voice} : pas retenu',
  },

  holds: {
    title: 'Attentes et démarreur, prévu et tenu',
    unknown: 'On ne peut pas le dire : le dossier ne se laisse pas rejouer.',
    none: "Rien n'a été chronométré.",
    what: 'Quoi',
    planned: 'Prévu',
    took: 'Mesuré',
    paused: 'Pause',
    onHold: '{time} en pause',
    brokenOff: 'interrompu',
    overLimit: 'au-delà de la limite',
  },

  computed: {
    title: 'Chiffres calculés pour ce moteur et cette météo',
    shown: "Tel qu'affiché",
  },

  cautions: {
    title: 'Mises en garde données',
    none: "Aucune mise en garde n'a été donnée.",
    note: 'En gras : les alertes passées avant tout le reste.',
    said: 'Dit',
    times: 'Fois',
  },

  tool: {
    title: "Remarques sur l'outil et le dossier",
    what: 'Quoi',
    refused: '{step} : refusé ; manque : {gates}.',
    notCarriedOut: "Appel à l'aide de {device} ({person}), {cause} : sans effet ; {why}.",
    notUnderstood: {
      one: "{n} entrée du dossier n'a pas pu être comprise et n'est pas montrée ; son numéro est {first}.",
      many: "{n} entrées du dossier n'ont pas pu être comprises et ne sont pas montrées ; la première porte le numéro {first}.",
    },
  },

  tables: {
    at: 'Temps',
    step: 'Étape',
    between: ' ; ',
    more: "Et {n} de plus ; tout est dans l'export JSON.",
  },

  rules: { title: 'Règles derrière les limites', rule: '[{n}] {sentence} Source : {source}.' },

  foot: {
    title: 'Signatures',
    signedOnDevice: "Signé par {name} sur l'appareil du chef d'atelier, {device}, à {time}.",
    signedByKey: "Signé par {name} à {time}, et avec la clé du chef d'atelier.",
    signedUnproved:
      "« Je signe » a été dit pour {name} à {time}. NON PROUVÉ : cela ne vient ni de l'appareil du chef d'atelier ni de sa clé. Signez à la main ci-dessus, ou avec : npm start -- sign DOSSIER --role supervisor --key FICHIER",
    valid: 'Signature numérique (Ed25519) {owner}, clé {keyId}, {at} : valide.',
    lastHash:
      'SHA-256 de la dernière entrée. Pour déceler toute modification ultérieure, même des lignes retirées à la fin, lancez : npm start -- verify DOSSIER --hash suivi de',
    lastSoundHash: 'SHA-256 de la dernière entrée intacte ; ce qui la suit dans le fichier est NON VÉRIFIÉ',
  },
};
