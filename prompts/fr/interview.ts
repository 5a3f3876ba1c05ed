import type { BySentence } from '../types.ts';

/** What the interview that makes an engine profile asks, offers and refuses, by its English sentence. */
export const interview: BySentence = {
  // Questions.
  'Units of the manual': 'Unités du manuel',
  'Is it a real engine?': 'Est-ce un vrai moteur ?',
  'Name of the profile': 'Nom du profil',
  Engine: 'Moteur',
  Cylinders: 'Cylindres',
  Displacement: 'Cylindrée',
  'Rated speed': 'Régime nominal',
  'What it drives': "Ce qu'il entraîne",
  'Where its automatic start is locked out': 'Où son démarrage automatique est bloqué',
  'Its breaker': 'Son disjoncteur',
  'Its gear lever': "Son levier d'inverseur",
  'Where the driven machine is uncoupled': 'Où la machine entraînée est désaccouplée',
  'It runs at its rated speed only?': "Ne tourne-t-il qu'à son régime nominal ?",
  Exhaust: 'Échappement',
  'The cock of the raw water': "Le robinet d'eau brute",
  'After-treatment': 'Dépollution',
  'Steering with fluid of its own?': 'Une direction avec son propre liquide ?',
  Volts: 'Volts',
  'A turbocharger?': 'Un turbocompresseur ?',
  'Fuelling, and so how it is kept from firing': "L'injection, et donc comment on l'empêche d'allumer",
  'What is unplugged or moved for that': 'Ce qui est débranché ou déplacé pour cela',
  'What switches it off every day, as it is called out': "Ce qui l'éteint tous les jours, comme on l'annonce",
  'Its jacket heater: where it is switched or unplugged': 'Son réchauffeur : où on le coupe ou le débranche',
  'it is named in every call-out, and where it is switched off':
    "il est nommé à chaque appel, et là où on l'éteint",
  'on the panel or at the helm: what stops it every day, as one would call it':
    "au tableau ou à la barre : ce qui l'éteint tous les jours, comme on le dirait",
  'it burns out dry: off until the engine is filled and bled, given back at the end':
    "à sec il grille : coupé tant que le moteur n'est pas rempli et purgé, rendu à la fin",
  'on the block: a heater on the mains, of standby sets above all':
    'sur le bloc : un réchauffeur sur secteur, surtout des groupes de secours',
  'What shuts it off when the key does not': 'Ce qui le coupe quand la clé ne le fait pas',
  'Speed at which it has to be shut off': 'Régime auquel il faut le couper',
  'Speed without load, from and to': 'Régime à vide, de et à',
  'Idle, warm, from and to': 'Ralenti à chaud, de et à',
  'Idle, cold, from and to': 'Ralenti à froid, de et à',
  'Least oil pressure at idle, hot': "Moindre pression d'huile au ralenti, à chaud",
  'Least oil pressure at rated speed, hot': "Moindre pression d'huile au régime nominal, à chaud",
  'Oil relief valve opens at': "Le clapet de décharge d'huile s'ouvre à",
  'Key off if no oil pressure within': "Contact coupé sans pression d'huile au bout de",
  'Oil with a new filter': 'Huile avec un filtre neuf',
  'Oil grades allowed': "Grades d'huile permis",
  'Oil filter': 'Filtre à huile',
  'Coolant in the whole system': 'Liquide de refroidissement en tout',
  Glycol: 'Glycol',
  'Glycol allowed, from and to': 'Glycol permis, de et à',
  'Thermostat begins to open': "Le thermostat commence à s'ouvrir",
  'Thermostat fully open': 'Thermostat tout ouvert',
  'Hottest coolant allowed': 'Liquide le plus chaud permis',
  'Pressure of the radiator cap': 'Pression du bouchon de radiateur',
  'Fuel tank': 'Réservoir',
  'Fuel filters one behind the other': "Filtres à gazole l'un après l'autre",
  'First fuel filter, fitted': 'Premier filtre à gazole, posé',
  'Second fuel filter, fitted': 'Second filtre à gazole, posé',
  Primer: "Pompe d'amorçage",
  'Most biodiesel allowed': 'Plus de biodiesel permis',
  'Heater for cold starts': 'Aide au démarrage à froid',
  'Its wait in the cold': 'Son attente au froid',
  'Cranking speed': 'Vitesse au démarreur',
  'Longest crank': 'Plus longue action du démarreur',
  'Rest between cranks': 'Repos entre deux actions',
  'Longest cranks in a row, then it has to cool': 'Actions les plus longues de suite, puis il doit refroidir',
  'Port where oil is pumped in before it turns': "Prise où l'huile est pompée avant qu'il tourne",
  'A short first run, then off for a look?': 'Une courte première marche, puis couper pour regarder ?',
  'Charging voltage, of 12 V at 25 °C (77 °F)': 'Tension de charge, pour 12 V à 25 °C (77 °F)',
  'Sensors, with commas between': 'Capteurs, séparés par des virgules',
  'Lamps of the panel, with commas between': 'Témoins du tableau, séparés par des virgules',
  'What is torqued again when cold, with commas between':
    'Ce qui est resserré à froid, séparé par des virgules',
  'A J1939 bus that may be read?': "Un bus J1939 qu'on peut lire ?",
  'What it gives, with commas between': "Ce qu'il donne, séparé par des virgules",
  "Address of the engine's controller": 'Adresse du calculateur du moteur',

  // Choices.
  'metric: L, bar, °C': 'métrique : L, bar, °C',
  'metric with kPa: L, kPa, °C': 'métrique avec kPa : L, kPa, °C',
  'US: qt, psi, °F': 'américaines : qt, psi, °F',
  'a vehicle: truck, bus, tractor': 'un véhicule : camion, autocar, tracteur',
  'a generating set': 'un groupe électrogène',
  'a boat': 'un bateau',
  'a pump or another machine': 'une pompe ou une autre machine',
  dry: 'sec',
  'wet: raw water is let into it': "humide : de l'eau brute y entre",
  none: 'sans',
  'a particulate filter that regenerates': 'un filtre à particules qui se régénère',
  '12 V': '12 V',
  '24 V': '24 V',
  'electronic (common rail, unit injectors): a plug is pulled':
    'électronique (rampe commune, injecteurs-pompes) : on débranche une prise',
  'mechanical: a lever is put to no delivery': 'mécanique : un levier est mis à débit nul',
  'mechanical with a shut-off solenoid: its plug is pulled':
    'mécanique avec un solénoïde de coupure : on débranche sa prise',
  'mechanical with a solenoid that shuts off by current: its lever is tied at stop':
    'mécanique avec un solénoïde qui coupe par le courant : on attache son levier à la coupure',
  'filled with oil first': "rempli d'huile d'abord",
  'fitted dry': 'posé à sec',
  ethylene: 'éthylène',
  propylene: 'propylène',
  one: 'un',
  two: 'deux',
  'filled with clean fuel first': "rempli d'abord de gazole propre",
  'pumped by hand': 'pompée à la main',
  'an electric pump': 'une pompe électrique',
  'intake heater': "réchauffeur d'admission",
  'glow plugs': 'bougies de préchauffage',

  // Why it is asked.
  'a number without a unit is taken in these': 'un nombre sans unité est pris dans celles-ci',
  'a real one is not started on what is only assumed; one for practice is: answer no':
    "un vrai ne démarre pas sur ce qui n'est que supposé ; pour l'exercice, répondez non",
  'people choose by it': 'on le choisit par ce nom',
  'the sweeps stay well below it, and oil pressure is given at it':
    "les montées restent bien au-dessous, et la pression d'huile y est donnée",
  'it need not be spoken': "on n'a pas à le dire",
  'only what the engine itself sends is acted on': "on n'agit que sur ce qu'envoie le moteur lui-même",
  'it stands in the record': 'il figure dans le dossier',
  'it tells the engine apart in the record': 'il distingue le moteur dans le dossier',
  'how fast it can warm and cool at all: what is read against that is questioned':
    'à quelle vitesse il peut chauffer et refroidir : une lecture contraire est mise en doute',
  'what is secured before it turns: a vehicle, a breaker and automatic start, a gear lever, a coupling':
    "ce qui est mis en sécurité avant qu'il tourne : un véhicule, un disjoncteur et le démarrage automatique, un levier d'inverseur, un accouplement",
  'with raw water in it the cock is shut while it cranks without firing, so that it does not fill':
    "avec de l'eau brute, le robinet est fermé tant qu'on l'entraîne sans allumer, pour qu'il ne se remplisse pas",
  'no regeneration beside joints that nobody has looked at':
    "pas de régénération près de joints que personne n'a regardés",
  'its fluid is filled, bled and looked at': 'son liquide est rempli, purgé et regardé',
  'an engine that runs at one speed has no idle and no sweeps':
    "un moteur à un seul régime n'a ni ralenti ni montées",
  'every limit of a voltage': 'toutes les limites de tension',
  'its bearings want oil before they turn': "ses paliers veulent de l'huile avant de tourner",
  'both people have it in hand before anything turns':
    "tous deux l'ont sous la main avant que rien ne tourne",
  'an engine that runs away is stopped at this speed, by voice and by the bus':
    "un moteur qui s'emballe est coupé à ce régime, à la voix et par le bus",
  'how fuelling is disabled, and how that is proved, before it is cranked for oil':
    "comment l'injection est neutralisée, et comment c'est prouvé, avant de l'entraîner pour l'huile",
  'it is named when it is disabled, proved and restored':
    "c'est nommé quand on neutralise, prouve et rétablit",
  'how much of it stands the coldest night': 'combien il en faut pour la nuit la plus froide',
  'how much concentrate and water to fill in': "combien de concentré et d'eau à verser",
  'how much of the can makes the mix': 'combien du bidon fait le mélange',
  'weaker coolant does not keep rust and pitting away':
    'un liquide plus faible ne protège pas de la rouille ni des piqûres',
  'stronger coolant carries less heat and freezes sooner again':
    'un liquide plus fort porte moins de chaleur et gèle de nouveau plus tôt',
  'the mix freezes so much below it': "le mélange gèle d'autant plus bas",
  'where the coolant boils here, and so how hot it may be switched off':
    'où le liquide bout ici, et donc à quelle chaleur on peut couper',
  'air that stays under the head boils it': "l'air qui reste sous la culasse le fait bouillir",
  'how much goes in at first': "combien on en verse d'abord",
  'more or less than this is asked again before the dipstick':
    'plus ou moins que cela est redemandé avant la jauge',
  'which of them suits the coldest night, and how long oil takes to the gauge':
    "lequel convient à la nuit la plus froide, et le temps de l'huile jusqu'au manomètre",
  'the grade is judged at it': 'le grade est jugé à cette température',
  'thinner oil does not carry the bearings': 'une huile plus fluide ne porte pas les paliers',
  'how much longer cold oil takes to the gauge': "combien l'huile froide tarde de plus au manomètre",
  'how it is fitted': 'comment il est posé',
  'how much No. 1 to add for the cold': "combien de gazole d'hiver ajouter pour le froid",
  'the blend for the coldest night': 'le mélange pour la nuit la plus froide',
  'the fuel clouds so much below it': "le gazole se trouble d'autant plus bas",
  'what the trade would fill, said beside the blend': 'ce que le métier verserait, dit à côté du mélange',
  'more of it is refused': 'davantage est refusé',
  'after-treatment is ruined by more': 'davantage abîme la dépollution',
  'how each is fitted: nothing dirty may get behind the last':
    'comment chacun est posé : rien de sale ne doit passer derrière le dernier',
  'strokes are counted, or a pump is let run': 'on compte les coups, ou on laisse marcher une pompe',
  'it runs so long before it is looked at': "elle marche aussi longtemps avant qu'on regarde",
  'more than this means air that comes in somewhere': "plus que cela veut dire qu'un air entre quelque part",
  'bearings have oil before the first turn': "les paliers ont de l'huile avant le premier tour",
  'what leaks is found within minutes, on an engine that stands':
    "ce qui fuit se trouve en quelques minutes, moteur à l'arrêt",
  'each plug is looked at by name': 'chaque prise est regardée par son nom',
  'each is looked at with the key on, and running': 'chacun est regardé contact mis, et en marche',
  'how long to wait for the lamp before cranking':
    "combien attendre le témoin avant d'actionner le démarreur",
  'when oil pressure can come at the earliest, and is late':
    "quand la pression d'huile peut venir au plus tôt, et quand elle tarde",
  'the starter is ruined by longer ones': 'de plus longues abîment le démarreur',
  'the starter cools before the next one': 'le démarreur refroidit avant la suivante',
  'then the starter has to cool down': 'ensuite le démarreur doit refroidir',
  'the thermal budget of the starter': 'la réserve thermique du démarreur',
  'on hotter days less': 'les jours plus chauds, moins',
  'how fast it cools': 'à quelle vitesse il refroidit',
  'more of them hide what is wrong': 'davantage cache ce qui ne va pas',
  'seconds of cranking to oil pressure': "secondes de démarreur jusqu'à la pression d'huile",
  'earliest and latest time': 'temps le plus court et le plus long',
  'the latest time': 'le temps le plus long',
  'the earliest time': 'le temps le plus court',
  'cranking ends, and the cause is looked for': "on cesse d'actionner, et on cherche la cause",
  'one flicker of a needle is no pressure': "un tremblement d'aiguille n'est pas une pression",
  'later than this the engine is stopped': 'plus tard que cela, le moteur est coupé',
  'no number above it is listened for': "aucun nombre au-dessus n'est écouté",
  'below it the needle may only lie': "au-dessous, l'aiguille peut seulement mentir",
  'a higher reading is doubted': 'une lecture plus haute est mise en doute',
  'below it the engine is stopped': 'au-dessous, le moteur est coupé',
  'idle is judged by it': "le ralenti est jugé d'après lui",
  'more is hunting': "davantage, c'est du pompage",
  'whether it charges': "s'il charge",
  'a weak battery ends in the middle of a crank': "une batterie faible finit au milieu d'une action",
  'the end of the warm-up': 'la fin de la chauffe',
  'hotter than this it is stuck': 'plus chaud que cela, il est coincé',
  'above it the engine is stopped': 'au-dessus, le moteur est coupé',
  'a gauge is not exact': "un instrument n'est pas exact",
  'oil has to be everywhere': "l'huile doit être partout",
  'a thermostat that does not open by then is an open item':
    "un thermostat qui ne s'ouvre pas d'ici là est un point ouvert",
  'the curve wants readings': 'la courbe veut des lectures',
  'new rings glaze at light idle: then fast idle':
    'des segments neufs se glacent au ralenti : alors ralenti accéléré',
  'it warms on at this speed': 'il continue de chauffer à ce régime',
  'pressure has to follow speed, gently': 'la pression doit suivre le régime, en douceur',
  'the turbo cools': 'le turbo refroidit',
  'pressure rises when nothing carries heat away': "la pression monte quand rien n'emporte la chaleur",
  'a hot cap scalds': 'un bouchon chaud ébouillante',
  'it must not boil then': 'il ne doit pas bouillir alors',
  'people move: then it is asked again': "les gens bougent : alors c'est redemandé",
  'whether it blocks, may stay, or has to clear': "s'il bloque, peut rester, ou doit s'effacer",
  'what need not be spoken; by itself it opens no gate':
    "ce qu'on n'a pas à dire ; seul, il n'ouvre aucune étape",
  'it is gone through before the signature': 'on la parcourt avant la signature',
  'none of them opens a gate': "aucune n'ouvre une étape suivante",

  // Where it is found.
  'look at any table of the manual': "voyez n'importe quel tableau du manuel",
  'you know': 'vous le savez',
  'what the shop calls this engine': "comment l'atelier appelle ce moteur",
  'data plate: power at so many rpm': 'plaque : puissance à tant de tours',
  'a log of the bus: "engine from-bus" reads it out': 'un journal du bus : « engine from-bus » le lit',
  'data plate': 'plaque du moteur',
  'data plate, or the specifications on the first pages':
    'plaque, ou les caractéristiques des premières pages',
  'you know: a vehicle, a generating set, a boat, a pump or another machine':
    'vous le savez : un véhicule, un groupe électrogène, un bateau, une pompe ou une autre machine',
  'on the engine: water comes out with the exhaust': "sur le moteur : de l'eau sort avec l'échappement",
  'on the exhaust': "sur l'échappement",
  'on the vehicle': 'sur le véhicule',
  'data plate of a generating set: 1500 rpm for 50 Hz, 1800 for 60 Hz':
    "plaque d'un groupe : 1500 tr/min pour 50 Hz, 1800 pour 60 Hz",
  'starter or alternator plate': "plaque du démarreur ou de l'alternateur",
  'on the engine': 'sur le moteur',
  'on the engine: shut-off lever, fuel cock, air flap; manual, emergency stop':
    "sur le moteur : levier de coupure, robinet de carburant, volet d'air ; manuel, coupure d'urgence",
  'manual, specifications: overspeed setting; else a tenth above the highest speed without load':
    'manuel, caractéristiques : réglage de survitesse ; sinon un dixième au-dessus du régime maximal à vide',
  'fuel system: electronic injection, rack lever, or a solenoid: unplugged it shuts off, or it shuts off only while it has current':
    "circuit de gazole : injection électronique, levier de crémaillère, ou solénoïde : débranché il coupe, ou il ne coupe que tant qu'il a du courant",
  'on the engine, or the manual, fuel system': 'sur le moteur, ou le manuel, circuit de gazole',
  'manual, fluids and capacities': 'manuel, fluides et contenances',
  'manual, fluids and capacities: with radiator and heater':
    'manuel, fluides et contenances : avec radiateur et chauffage',
  'label of the coolant': 'étiquette du liquide',
  'manual, coolant: allowed mix': 'manuel, refroidissement : mélange permis',
  'common practice': 'usage du métier',
  'stamped on the cap': 'frappé sur le bouchon',
  'manual, filling the cooling system': 'manuel, remplissage du refroidissement',
  'manual, fluids and capacities: with filter': 'manuel, fluides et contenances : avec filtre',
  'dipstick: between its marks, halved': 'jauge : entre ses repères, par moitié',
  'manual, oil: chart of grades by temperature ("10W-30 below 0 °F"); viscosities from the data sheet of the oil':
    "manuel, huile : tableau des grades selon la température (« 10W-30 sous 0 °F ») ; viscosités de la fiche de l'huile",
  'in no manual: a figure of the calculation; leave it as proposed unless you measured it':
    "dans aucun manuel : un chiffre du calcul ; laissez-le tel que proposé sauf si vous l'avez mesuré",
  'manual, oil; else the least that its grade promises':
    'manuel, huile ; sinon le moins que promet son grade',
  'manual, oil filter: filled first where it hangs': "manuel, filtre à huile : rempli d'abord s'il pend",
  'manual, fluids and capacities; plate of the tank': 'manuel, fluides et contenances ; plaque du réservoir',
  'supplier of the fuel': 'fournisseur du gazole',
  'manual, fuel; label at the filler': 'manuel, gazole ; étiquette au remplissage',
  'manual, fuel filter: dry or pre-filled': 'manuel, filtre à gazole : à sec ou rempli',
  'on the engine, at the fuel filter': 'sur le moteur, au filtre à gazole',
  'manual, bleeding the fuel system': 'manuel, purge du circuit de gazole',
  'manual, oil system: gallery plug': 'manuel, graissage : bouchon de canal',
  'manual, first start after an overhaul': 'manuel, premier démarrage après révision',
  'wiring diagram; on the engine': 'schéma électrique ; sur le moteur',
  'manual, instruments; turn the key and look': 'manuel, instruments ; tournez la clé et regardez',
  'manual, starting: preheating': 'manuel, démarrage : préchauffage',
  'manual, starting; or measured': 'manuel, démarrage ; ou mesuré',
  'manual, starting: never longer than': 'manuel, démarrage : jamais plus de',
  'manual, starting: wait between tries': 'manuel, démarrage : attente entre les essais',
  'manual, starting: tries before it has to cool': 'manuel, démarrage : essais avant refroidissement',
  'manual, oil pump; or its gears measured': 'manuel, pompe à huile ; ou ses pignons mesurés',
  'teeth of its drive counted': 'dents de son entraînement comptées',
  'measured: what the sump lacks after the first crank':
    'mesuré : ce qui manque au carter après la première action',
  'manual, starting: stop if no pressure within': 'manuel, démarrage : couper sans pression au bout de',
  'on the gauge': 'sur le manomètre',
  'gauge: first mark; or the switch of the lamp': 'manomètre : premier repère ; ou le contact du témoin',
  'manual, oil system: relief valve': 'manuel, graissage : clapet de décharge',
  'manual, specifications: least oil pressure at idle and at rated speed':
    "manuel, caractéristiques : moindre pression d'huile au ralenti et au régime nominal",
  'manual, specifications; or the plate': 'manuel, caractéristiques ; ou la plaque',
  'manual, governor': 'manuel, régulateur',
  'alternator plate or regulator': "plaque de l'alternateur ou régulateur",
  'manual, charging': 'manuel, charge',
  'stamped on the thermostat': 'frappé sur le thermostat',
  'manual, cooling system': 'manuel, refroidissement',
  'manual, cooling system: highest temperature': 'manuel, refroidissement : plus haute température',
  'manual, starting; 3 to 5 minutes are usual': "manuel, démarrage ; 3 à 5 minutes sont d'usage",
  'manual, running in': 'manuel, rodage',
  'between idle and four fifths of the rated speed; common practice':
    'entre le ralenti et quatre cinquièmes du régime nominal ; usage du métier',
  'manual, stopping the engine': 'manuel, arrêt du moteur',
  'manual, cooling system; 50 °C or less': 'manuel, refroidissement ; 50 °C ou moins',
  'manual, fault codes': 'manuel, codes de défaut',
  'wiring diagram; a socket with the marking J1939': 'schéma électrique ; une prise marquée J1939',
  'manual, after the first run': 'manuel, après la première marche',
  'your shop': 'votre atelier',

  // What things are called.
  'mode switch of the panel': 'sélecteur de mode du tableau',
  'output breaker of the set': 'disjoncteur de sortie du groupe',
  'gear lever at the helm': "levier d'inverseur au poste de barre",
  'clutch lever': "levier d'embrayage",
  'raw water cock': "robinet d'eau brute",
  'injector harness plug': 'prise du faisceau des injecteurs',
  'shut-off lever of the injection pump': "levier de coupure de la pompe d'injection",
  'shut-off solenoid plug': 'prise du solénoïde de coupure',
  'fuel shut-off': 'coupure du gazole',
  'shut-off lever, or the fuel cock': 'levier de coupure, ou le robinet de gazole',
  'oil pressure': "pression d'huile",
  'coolant temperature': 'température du liquide',
  'intake temperature': "température d'admission",
  'rail pressure': 'pression de rampe',
  'crank speed': 'régime du vilebrequin',
  'cam position': "position de l'arbre à cames",
  'boost pressure': 'pression de suralimentation',
  'red warning': 'alerte rouge',
  'amber warning': 'alerte orange',
  charging: 'charge',
  'wait to start': 'préchauffage',
  'water in fuel': 'eau dans le gazole',
  'exhaust manifold': "collecteur d'échappement",
  'turbo clamps': 'colliers du turbo',
  'coolant hose clamps': 'colliers des durites',
  'oil drain plug': "bouchon de vidange d'huile",

  // Where a value comes from.
  plate: 'plaque',
  manual: 'manuel',
  measured: 'mesuré',
  seen: 'vu sur le moteur',
  computed: 'calculé',
  assumed: 'supposé',
  'page {}': 'page {}',
  'accepted by {}': 'accepté par {}',
  'In which cold it waits so long': 'À quel froid il attend autant',
  'In deeper cold it would wait for more than {} s; allowed: a colder one, or a shorter wait.':
    'Par plus grand froid il attendrait plus de {} s ; permis : une plus froide, ou une attente plus courte.',
  'at the cold that is stated; the rest is its usual course':
    'au froid indiqué ; le reste suit la courbe habituelle',
  'at idle and at rated speed; the rest follows': 'au ralenti et au régime nominal ; le reste en découle',
  'that it is run so; its times are usual': 'que cela se fait ; les durées sont usuelles',
  'from above the idle to four fifths of the rated speed':
    'du dessus du ralenti aux quatre cinquièmes du régime nominal',
  'below {}': 'sous {}',
  'above {}': 'au-dessus de {}',
  'Highest speed without load': 'Régime maximal à vide',
  'what stops a runaway stays above what the governor allows':
    'la limite de survitesse reste au-dessus de ce que permet le régulateur',
  'data plate, or manual, specifications: high idle':
    'plaque, ou manuel, caractéristiques : régime maximal à vide',
  'a tenth above the highest speed without load; common practice, no published source':
    'un dixième au-dessus du régime maximal à vide ; usage du métier, sans source publiée',
  '8 % above the rated speed: the droop of a governor; common practice, no published source':
    '8 % au-dessus du régime nominal : le statisme du régulateur ; usage du métier, sans source publiée',
  'It has to be from the rated speed, {} rpm, to {} rpm.':
    'Il doit aller du régime nominal, {} rpm, à {} rpm.',
  'the highest without load': 'le maximal à vide',
  'So narrow a band is hardly ever read off; allowed: {} rpm from end to end, or more.':
    "Une bande si étroite ne se lit presque jamais ; permis : {} rpm d'un bout à l'autre, ou plus.",
  'not said where from': "on ne dit pas d'où",
  'common practice, no published source': 'usage du métier, sans source publiée',
  'as the profile is called': "comme s'appelle le profil",
  '12 % above the rated speed; common practice, no published source':
    '12 % au-dessus du régime nominal ; usage du métier, sans source publiée',
  '2 % below to 5 % above: the droop of a governor':
    "de 2 % au-dessous à 5 % au-dessus : le statisme d'un régulateur",
  'up to 150 rpm above the warm idle': "jusqu'à 150 tr/min au-dessus du ralenti à chaud",
  '1 bar (15 psi) at idle; common practice, no published source':
    '1 bar (15 psi) au ralenti ; usage du métier, sans source publiée',
  '2.5 bar (36 psi) at rated speed; common practice, no published source':
    '2,5 bar (36 psi) au régime nominal ; usage du métier, sans source publiée',
  'less than the 10 to 15 s that are usual; common practice, no published source':
    "moins que les 10 à 15 s d'usage ; usage du métier, sans source publiée",
  '15W-40, with the usual data sheet': "15W-40, avec la fiche d'usage",
  '12 K (22 °F) above its opening': '12 K (22 °F) au-dessus de son ouverture',
  'two minutes show most leaks; common practice, no published source':
    'deux minutes montrent la plupart des fuites ; usage du métier, sans source publiée',
  'SAE J300': 'SAE J300',
  '1.4 times the relief pressure': '1,4 fois la pression de décharge',
  'the second sweep': 'la deuxième montée',
  'strokes of a primer may be left uncounted': "on peut ne pas compter les coups d'amorçage",
  'only a vehicle steers by fluid': 'seul un véhicule a une direction à liquide',
  'a log of the bus over {} s': 'un journal du bus de {} s',

  // What is wrong with an answer.
  '"{}" is one thing too many; {words}': '« {} » est de trop ; {words}',
  'give one number.': 'donnez un seul nombre.',
  'give two numbers, such as {}-{}.': 'donnez deux nombres, comme {}-{}.',
  '"{}" is none of these; give its number, 1 to {}.':
    "« {} » n'en fait pas partie ; donnez son numéro, de 1 à {}.",
  '"{}" may be where it comes from, or the end of its name; write "{}" or "{}".':
    '« {} » peut être la source ou la fin du nom ; écrivez « {} » ou « {} ».',
  '"{}" may be {}; give the number.': '« {} » peut être {} ; donnez le numéro.',
  '"{}" is neither; answer yes or no.': "« {} » n'est ni l'un ni l'autre ; répondez oui ou non.",
  'Give it a name.': 'Donnez-lui un nom.',
  'That is {} letters long; {} are allowed.': 'Cela fait {} lettres ; {} sont permises.',
  'It has to be a whole number.': 'Il faut un nombre entier.',
  '{} is not allowed; from {} to {} is.': "{} n'est pas permis ; de {} à {}, oui.",
  '{} is not allowed; from {} to {} is: {words}.': "{} n'est pas permis ; de {} à {}, oui : {words}.",
  'no relief valve of a diesel opens later, and no bus shows more':
    "aucun clapet de diesel ne s'ouvre plus tard, et aucun bus n'en montre plus",
  'it is called so when it is secured': "on l'appelle ainsi quand on la met en sécurité",
  'beside the engine: on the panel, at the helm, at the driven machine':
    'près du moteur : au tableau, à la barre, à la machine entraînée',
  'it is called so when it is shut and opened': "on l'appelle ainsi quand on la ferme et l'ouvre",
  'between the inlet of the raw water and its pump': "entre l'arrivée d'eau brute et sa pompe",
  'slower and faster engines are started by procedures of their own':
    "les moteurs plus lents ou plus rapides se démarrent selon d'autres procédures",
  'its speed is judged by it': "son régime est jugé d'après cela",
  'manual of the set: speed or frequency without load': 'manuel du groupe : régime ou fréquence à vide',
  'so hot every winding may get, and none hotter':
    "tout enroulement peut être aussi chaud, aucun ne peut l'être plus",
  'a limit for a frosty day allows no full crank on any other':
    'une limite pour un jour de gel ne permet un plein essai aucun autre jour',
  'a starter that has cranked is cool after minutes, not after seconds or hours':
    'un démarreur qui a servi est froid après des minutes, non après des secondes ou des heures',
  'with less it may not start, and a good one that has cranked shows no more':
    "avec moins, elle peut ne pas démarrer, et une bonne batterie qui a servi n'en montre pas plus",
  'It has to be from {} to {}: a thermostat opens over {} to {}.':
    "Il faut de {} à {} : un thermostat s'ouvre sur {} à {}.",
  'An engine that is well would seem to lose its pressure at idle; allowed: {} or less.':
    'Un moteur sain semblerait perdre sa pression au ralenti ; permis : {} ou moins.',
  'Above this floor no relief valve leaves room for the sweeps; allowed: {} or less.':
    'Au-dessus de ce minimum, aucun clapet ne laisse de place aux montées ; permis : {} ou moins.',
  'That is one number; {words}': "C'est un seul nombre ; {words}",
  'The first has to be below the second; {words}': 'Le premier doit être plus petit que le second ; {words}',
  'Name at least one, with commas between.': 'Nommez-en au moins un, avec des virgules.',
  'Those are {}; {} are allowed.': 'Il y en a {} ; {} sont permis.',
  '"{}" is too long; {} letters are allowed.': '« {} » est trop long ; {} lettres sont permises.',
  'Name at least one, such as 15W-40.': 'Nommez-en au moins un, comme 15W-40.',
  '"{}" is no grade; allowed: one such as 15W-40, or 15W-40 110/14.5 with its data sheet.':
    "« {} » n'est pas un grade ; permis : comme 15W-40, ou 15W-40 110/14.5 avec sa fiche.",
  '{} is no multigrade of SAE J300; allowed: one such as 15W-40.':
    "{} n'est pas une huile multigrade selon SAE J300 ; permis : comme 15W-40.",
  '{} has from {} up to {} mm2/s at 100 °C, not {}.': '{} a de {} à {} mm2/s à 100 °C, et non {}.',
  '{} at 40 °C has to be more than twice as thick as at 100 °C, and 1000 mm2/s at most.':
    "{} à 40 °C doit être plus de deux fois plus épaisse qu'à 100 °C, et d'au plus 1000 mm2/s.",
  '{} may mean two things; write it without the comma.':
    '{} peut vouloir dire deux choses ; écrivez-le sans virgule.',
  '"{}" is no number; write it in figures, such as {}.':
    "« {} » n'est pas un nombre ; écrivez-le en chiffres, comme {}.",
  '"{}" is no unit here; give the bare number.': "« {} » n'est pas une unité ici ; donnez le nombre seul.",
  '"{}" is no unit here; allowed: {}.': "« {} » n'est pas une unité ici ; permis : {}.",
  'It has to be above {}, as {words} is {}.': 'Il faut plus que {}, car {words} est à {}.',
  'the rated speed': 'le régime nominal',
  'the thermostat fully open': 'le thermostat tout ouvert',
  'that at idle': 'celle au ralenti',
  'that of the winter fuel': "celui du gazole d'hiver",
  'the least': 'le minimum',
  '{words} of an engine of {} has to be from {} to {}.': "{words} d'un moteur de {} doit faire de {} à {}.",
  'The oil': "L'huile",
  'The coolant': 'Le liquide de refroidissement',
  '"{}" stands there twice; name each thing once.':
    '« {} » y figure deux fois ; nommez chaque chose une fois.',
  '"{}" is nothing that a bus is read for; allowed: {}.':
    "« {} » n'est rien de ce qu'on lit sur un bus ; permis : {}.",
  'The coolant would boil after key off with this thermostat; allowed: a cap of {} or more.':
    'Le liquide bouillirait contact coupé avec ce thermostat ; permis : un bouchon de {} ou plus.',
  '{} cylinders make from {} to {}.': '{} cylindres font de {} à {}.',
  'It has to hold the rated speed, {} rpm.': 'Il faut que le régime nominal, {} tr/min, y soit.',
  'It has to be within 10 % of the rated speed, {} rpm.':
    'Il faut rester à 10 % près du régime nominal, {} tr/min.',
  'It has to end below the speed at which it is stopped, {} rpm.':
    'Il faut finir au-dessous du régime où on le coupe, {} tr/min.',
  'Below a rated speed of {} rpm that idle leaves no room for sweeps; allowed: a slower one.':
    'Sous un régime nominal de {} tr/min, ce ralenti ne laisse pas de place aux montées ; permis : un plus lent.',
  'A cold engine idles no slower than a warm one; allowed: from {} rpm.':
    "Un moteur froid ne tourne pas moins vite qu'un chaud ; permis : à partir de {} tr/min.",
  'Its fastest has to be from {} to {} rpm.': 'Son plus rapide doit être de {} à {} tr/min.',
  'Below these floors it would be open at every speed; allowed: {} or more.':
    'Avec ces minimums il serait ouvert à tous les régimes ; permis : {} ou plus.',
  '{} stands there twice; name each grade once.': '{} y figure deux fois ; nommez chaque grade une fois.',
  'The least may be 55 % at most: tables of freezing end there.':
    'Le minimum peut être de 55 % au plus : les tables de gel finissent là.',
  'The most has to be 25 % or more: less stands no winter.':
    "Le maximum doit être de 25 % ou plus : moins ne tient pas l'hiver.",
  'Nothing stands behind the only filter, so what is poured in goes to the injection unfiltered; allowed: dry.':
    "Rien ne suit l'unique filtre, et ce qu'on y verse va à l'injection sans être filtré ; permis : à sec.",
  'Nothing stands behind the last filter, so what is poured in goes to the injection unfiltered; allowed: dry.':
    "Rien ne suit le dernier filtre, et ce qu'on y verse va à l'injection sans être filtré ; permis : à sec.",
  'The heater is waited for by a lamp; name it "{words}" among them.':
    'On attend le préchauffage par un témoin ; nommez-y « {words} ».',
  'The can has to hold at least as much glycol as the strongest mix, {} %.':
    'Le bidon doit contenir au moins autant de glycol que le mélange le plus fort, {} %.',
  'No grade that is allowed is so thick at {}; allowed: {} mm2/s or less.':
    "Aucun grade permis n'est aussi épais à {} ; permis : {} mm2/s ou moins.",
  'It has to be {} % or more, the least it moves.': "Il faut {} % ou plus, le moins qu'elle débite.",
  'The gauge has to reach beyond where the relief valve opens; allowed: {} or more.':
    "Le manomètre doit aller plus loin que l'ouverture du clapet ; permis : {} ou plus.",
  'It has to be from {} to {} s, the least and the longest warm-up.':
    'Il faut de {} à {} s, la moindre et la plus longue chauffe.',
  'It has to be above the warm idle, {} rpm, and no faster than the last sweep, {} rpm.':
    'Il faut plus que le ralenti à chaud, {} tr/min, et pas plus que la dernière montée, {} tr/min.',
  '"{}" stops the session when it is read out; call it otherwise, such as shut-off lever.':
    '« {} » met fin à la séance quand on le lit ; appelez-le autrement, comme levier de coupure.',
  'In a cold shop the oil would hardly move; allowed: {} mm2/s or more.':
    "Dans un atelier froid l'huile bougerait à peine ; permis : {} mm2/s ou plus.",
  'In so few cranks no oil comes to the gauge; allowed: {} or more.':
    "En si peu d'actions aucune huile n'arrive au manomètre ; permis : {} ou plus.",
  'It has to be from {} to {} of the oil that it holds.': "Il faut de {} à {} de l'huile qu'il contient.",
  'An engine that is well would be given up; allowed: {} or more.':
    'On abandonnerait un moteur en bon état ; permis : {} ou plus.',
  'On a hot day nobody could tell from the voltage whether it charges; allowed: less.':
    'Par grande chaleur, la tension ne dirait pas si la charge se fait ; permis : moins.',
  'The cranks that are allowed would be over before the oil is at the gauge; allowed: a faster pump, less to fill, or more cranks.':
    "Les actions permises seraient finies avant que l'huile soit au manomètre ; permis : une pompe plus rapide, moins à remplir, ou plus d'actions.",
  'Above this idle no relief valve leaves room for so much; allowed: {} or less.':
    'Au-dessus de ce ralenti aucun clapet ne laisse de place à autant ; permis : {} ou moins.',
  'With this thermostat and cap it would always be said to boil; allowed: {} K or less.':
    "Avec ce thermostat et ce bouchon, on dirait toujours qu'il bout ; permis : {} K ou moins.",
  'No set runs so fast at one speed, and its speed could not be read; allowed: a rated speed of {} rpm or less.':
    'Aucun groupe ne tourne si vite à un seul régime, et son régime ne pourrait être lu ; permis : un régime nominal de {} tr/min ou moins.',

  // The talk at the keys.
  'Why: {words}. Where: {words}.': 'Pourquoi : {words}. Où : {words}.',
  'in {}': 'en {}',
  'Enter: {}': 'Entrée : {}',
  'As put forward: {}': 'Proposé : {}',
  yes: 'oui',
  no: 'non',
  'Found: {words}.': 'Se trouve : {words}.',
  'Enter takes what is put forward. Behind a value you may say where it comes from: "15 qt p 12", "150 measured".':
    "Entrée prend ce qui est proposé. Derrière une valeur vous pouvez dire d'où elle vient : « 15 L p 12 », « 150 mesuré ».",
  'The source alone confirms what is put forward: "p 12", "plate", "manual", "measured", "seen", "assumed".':
    'La source seule confirme ce qui est proposé : « p 12 », « plaque », « manuel », « mesuré », « vu », « supposé ».',
  '?  more about this one      -  nobody knows: taken as put forward, and marked assumed':
    '?  en savoir plus   -  personne ne sait : pris tel que proposé, et marqué supposé',
  '<  back to the one before   < 12  back to number 12     list  all answers so far     quit  leave; nothing is lost':
    "<  revenir à la précédente   < 12  au numéro 12   liste  toutes les réponses   quitter  rien n'est perdu",
  'There is none before this one.': "Il n'y en a pas avant celle-ci.",
  'Nothing can be put forward here: look, or ask the maker; quit leaves, and nothing is lost.':
    'Rien ne peut être proposé ici : regardez, ou demandez au constructeur ; quit sort, et rien ne se perd.',
  'Has to be read or measured before its first fire: {words}.':
    'À lire ou à mesurer avant son premier démarrage : {words}.',
  'Only assumed of {words}: {}.': 'Seulement supposé pour {words} : {}.',
  'Supervisor: your name accepts that; Enter leaves it open.':
    "Chef d'atelier : votre nom l'accepte ; Entrée le laisse ouvert.",
  'the limits of the starter': 'les limites du démarreur',
  'the coolant': 'le refroidissement',
  'the heater': 'le préchauffage',
  'the idle': 'le ralenti',
  'A new engine. Have its data plate and the first pages of its manual at hand.':
    'Un nouveau moteur. Ayez sa plaque et les premières pages de son manuel sous la main.',
  'Going on with {} answers from {}.': 'On continue avec {} réponses de {}.',
  'Left. Go on with: {}': 'Quitté. Pour continuer : {}',
  'Written: {}, version {}, SHA-256 {}.': 'Écrit : {}, version {}, SHA-256 {}.',
  'Of what was asked {} values are assumed, and {} more that nobody is asked for: {}':
    'De ce qui est demandé, {} valeurs sont supposées, et {} autres que personne ne demande : {}',
  'All is answered. Numbers of what is to be answered again, such as 5, 12; Enter leaves all as it is.':
    'Tout est répondu. Numéros de ce qui est à reprendre, par exemple 5, 12 ; Entrée laisse tout ainsi.',
  'Give numbers from 1 to {}, or Enter.': 'Donnez des numéros de 1 à {}, ou Entrée.',
  'To change an answer: {}': 'Pour changer une réponse : {}',
  'Nothing was changed.': "Rien n'a été changé.",
  'There is no answer {}; list shows them.': "Il n'y a pas de réponse {} ; liste les montre.",
  'Not yet fit for the first fire of a real engine: {}':
    "Pas encore prêt pour le premier démarrage d'un vrai moteur : {}",
  'Practise on it: {}': 'Exercez-vous dessus : {}',
  'This one by the keys, please.': "Celle-ci au clavier, s'il vous plaît.",
  '{words}. By the keys, please.': "{words}. Au clavier, s'il vous plaît.",
  'Heard: {words}. Correct?': 'Entendu : {words}. Exact ?',
  '{}. Correct?': '{}. Exact ?',
  'Not understood.': 'Pas compris.',

  // The sheet of an engine.
  'The engine': 'Le moteur',
  Coolant: 'Refroidissement',
  Oil: 'Huile',
  Fuel: 'Gazole',
  'How it is kept from firing': "Comment on l'empêche d'allumer",
  'Emergency cut-off': "Coupure d'urgence",
  'Oil by pump before it turns': "Huile par pompe avant qu'il tourne",
  'Short first run': 'Courte première marche',
  'Intake heater or glow plugs': 'Réchauffeur ou bougies',
  Starter: 'Démarreur',
  'Oil pump and galleries': 'Pompe à huile et canaux',
  'Oil pressure': "Pression d'huile",
  Idle: 'Ralenti',
  Charging: 'Charge',
  Thermostat: 'Thermostat',
  'Warm-up': 'Chauffe',
  Shutdown: 'Mise au repos',
  'Second person': 'Équipier',
  'Vehicle bus': 'Bus du véhicule',
  'not said': 'pas dit',
  'An invented engine: for practice only.': "Un moteur inventé : pour l'exercice seulement.",
  'It is an invented engine: for practice only.': "C'est un moteur inventé : pour l'exercice seulement.",
  '{} values are assumed.': '{} valeurs sont supposées.',
  'The procedure': 'La procédure',
  'Limits at {}, with a night of {}, at sea level': 'Limites à {}, avec une nuit à {}, au niveau de la mer',
  'Coolant: {} of concentrate and {} of water, good to {}':
    "Refroidissement : {} de concentré et {} d'eau, bon jusqu'à {}",
  'It boils at: {}': 'Il bout à : {}',
  'Oil: {}': 'Huile : {}',
  'Fuel, into a tank a tenth full: {} of No. 1 and {} of No. 2':
    "Gazole, dans un réservoir au dixième : {} d'hiver et {} courant",
  'runs {} s, then drains {} s': "tourne {} s, puis {} s pour que l'huile redescende",
  'blocks the start': 'bloque le démarrage',
  'may stay': 'peut rester',
  'watched for {} s': 'surveillé pendant {} s',
  'Oil pressure after cranking for: {} s at the earliest, {} s expected, given up after {} s':
    "Pression d'huile après : {} s au plus tôt, {} s attendu, abandon après {} s",
  'First crank: {} s at most': 'Première action : {} s au plus',
  'Heater: {words}': 'Préchauffage : {words}',
  'Battery at rest: {} V or more': 'Batterie au repos : {} V ou plus',
  'While cranking: {} V or more': 'Au démarreur : {} V ou plus',
  'Charging: {} to {} V': 'Charge : {} à {} V',
  'All values are the same.': 'Toutes les valeurs sont les mêmes.',
  '{}: {} has to be read or measured before a real first fire; {words}.':
    '{} : {} à lire ou à mesurer avant un vrai premier démarrage ; {words}.',
  '{}: {words} may stay assumed only where the supervisor accepts it by name; engine accept FILE --by NAME.':
    "{} : {words} : ne peut rester supposé que si le chef d'atelier l'accepte par son nom ; engine accept FICHIER --by NOM.",
  'provenance: {} does not say where its values come from, so all of them count as assumed.':
    "provenance : {} ne dit pas d'où viennent ses valeurs, toutes comptent donc comme supposées.",
  '{}: every value is allowed, and they make a procedure.':
    '{} : chaque valeur est permise, et elles font une procédure.',
  'It is fit for a first fire.': 'Il est prêt pour un premier démarrage.',
  'rows have to be in rising order of {}': 'les lignes doivent aller par {} croissant',
  'points have to be in rising order of {}': 'les points doivent aller par {} croissant',
  'has to be 5 or 6 speeds, or none with fixedSpeedRpm':
    'il faut 5 ou 6 régimes, ou aucun avec fixedSpeedRpm',
  'has to be empty with fixedSpeedRpm': 'doit être vide avec fixedSpeedRpm',
  'has to be left out with fixedSpeedRpm': 'ne doit pas y être avec fixedSpeedRpm',
  'has to hold the fixed speed, {}': 'doit contenir le régime fixe, {}',
  'speeds have to rise from one sweep to the next': "les régimes doivent croître d'une montée à l'autre",
  'times have to rise from one look to the next': "les temps doivent croître d'un regard à l'autre",
  'has to be at most {}': "doit être d'au plus {}",
  'SPN {} FMI {} is judged twice': 'SPN {} FMI {} est jugé deux fois',
  'has to be from minS to maxS': 'doit être entre minS et maxS',
  'has to be above the warm idle, {}': 'doit être au-dessus du ralenti à chaud, {}',
  'has to be among the speeds of the sweeps, not above them':
    'doit être parmi les régimes des montées, pas au-dessus',
  'names no lamp; lamps are {}': 'ne nomme aucun témoin ; les témoins sont {}',
  '"{}" is used twice': '« {} » sert deux fois',
  'is not in readings; list there what the bus gives':
    "n'est pas dans readings ; mettez-y ce que donne le bus",
  'has to list {} angles, the first of them 0': 'doit donner {} angles, le premier à 0',
  'angles have to rise, all below {}': 'les angles doivent croître, tous au-dessous de {}',
  'has to be above every idle and sweep, {}': 'doit être au-dessus de tout ralenti et de toute montée, {}',
  'list the filter "first", then, if there is one, "second"':
    "mettez le filtre « first », puis, s'il y en a un, « second »",
  'minRpm has to be below maxRpm': 'minRpm doit être au-dessous de maxRpm',
  'has to be below {}': 'doit être au-dessous de {}',
  'a name in camelCase letters and digits, such as oilPressure':
    'un nom en lettres et chiffres, comme oilPressure',
  'an SAE multigrade such as 15W-40': 'une huile multigrade SAE comme 15W-40',
  'watchS is needed with judgement "watch" and allowed only there':
    'watchS va avec le jugement « watch », et seulement là',
  'goes only with "manual"': "ne va qu'avec « manual »",
  'goes only with "assumed"': "ne va qu'avec « assumed »",
  'the rule by which it was computed has to be named': 'la règle du calcul doit être nommée',
};
