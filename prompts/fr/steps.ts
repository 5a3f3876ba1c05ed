const soakGoesOn = {
  title: 'Le coup de chaleur continue',
  ask: 'Le coup de chaleur continue. Le bouchon reste fermé.',
} as const;

/** One entry for each step of the procedure: what it is called, and how it is asked for. Key word first. */
export const steps = {
  'job.card': {
    title: 'Fiche de travail',
    ask: "Fiche : {vehicle}, {engine}. Technicien {technician}, équipier {second}. Si c'est juste, dites fiche correcte.",
  },
  'job.makerFirst': {
    title: "Ce qui passe d'abord",
    ask: 'Avis. Les instructions du fabricant du moteur, la réglementation locale et les règles du métier passent avant tout ce que je dis. Dites compris.',
  },
  'job.protection': {
    title: 'Lunettes et gants',
    ask: 'Protections : lunettes et gants pour vous deux. Dites protections en place.',
  },
  'job.hazards': {
    title: 'Dangers',
    ask: "Avertissement. Restez loin du ventilateur et des courroies. N'ouvrez jamais un bouchon chaud. Ne cherchez jamais une fuite à la main : du carburant injecté sous la peau est une urgence chirurgicale. Dites compris.",
  },
  'job.ventilation': {
    title: "Extraction des gaz d'échappement",
    ask: "Les gaz d'échappement tuent en lieu fermé. Portes ouvertes ou extraction en marche ? Dites l'air est bon.",
  },
  'job.extinguisher': {
    title: 'Extincteur',
    ask: 'Extincteur à portée de main ? Dites extincteur prêt.',
  },
  'job.autoStart': {
    title: 'Démarrage automatique verrouillé',
    ask: 'Démarrage automatique : verrouillez-le et étiquetez-le : {at}. Rien ne doit le lancer que vous. Dites démarrage verrouillé.',
  },
  'job.breaker': {
    title: 'Disjoncteur ouvert',
    ask: "Disjoncteur ouvert, verrouillé et étiqueté : {at}. Il reste ouvert jusqu'à la signature. Dites disjoncteur ouvert.",
  },
  'job.gearLever': {
    title: 'Bateau amarré',
    ask: "Bateau amarré, {at} au neutre, personne près de l'hélice ? Dites levier au neutre.",
  },
  'job.coupling': {
    title: 'Machine débrayée',
    ask: "Ce qu'il entraîne est séparé : {at}, et ne peut tourner ? Dites machine débrayée.",
  },
  'job.parked': {
    title: 'Véhicule immobilisé',
    ask: 'Véhicule : point mort, frein serré, roues calées ? Dites véhicule calé.',
  },
  'job.cutOff': {
    title: "Coupure d'urgence",
    ask: 'Coupure : {how} Dites coupure prête.',
  },
  'job.ambient': { title: "Température de l'air", ask: "Température de l'air maintenant, en {unit} ?" },
  'job.coldestNight': {
    title: 'Nuit la plus froide attendue',
    ask: 'Nuit la plus froide attendue, en {unit} ?',
  },
  'job.altitude': { title: 'Altitude', ask: 'Altitude, en {unit} ?' },
  'job.figures': {
    title: 'Air, nuit et altitude',
    ask: 'Air {air}, nuit la plus froide {coldest}, altitude {altitude}. Correct ?',
  },
  'job.stopTechnician': {
    title: "Mot d'urgence, technicien",
    ask: "Essai du mot d'urgence. {words} Technicien, dites-le maintenant.",
  },
  'job.stopSecond': {
    title: "Mot d'urgence, équipier",
    ask: "Essai du mot d'urgence. {words} Équipier, dites-le maintenant.",
  },

  'fill.coolantMix': {
    title: 'Mélange de refroidissement',
    ask: "Mélange : {concentrate} de concentré, {glycol}, et {water} d'eau, pour tenir jusqu'à {freeze}. Dites mélange prêt.",
  },
  'fill.coolantFilled': {
    title: 'Circuit rempli',
    ask: 'Remplissez lentement le circuit, robinet de chauffage ouvert. Dites circuit plein.',
  },
  'fill.coolantBleed': { title: 'Purge du circuit', ask: 'Purgez le circuit de refroidissement.' },
  'fill.coolantBled': {
    title: 'Circuit sans air',
    ask: "Circuit : niveau stable, plus d'air ? Dites purge terminée.",
  },
  'fill.coolantFreezePoint': {
    title: 'Point de congélation mesuré',
    ask: 'Mesurez le mélange. Point de congélation, en {unit} ?',
  },
  'fill.oilGrade': {
    title: "Grade d'huile",
    ask: "Grade d'huile pour {coldest} : {grades}. Si l'huile est de ceux-là, dites huile conforme.",
  },
  'fill.oilFilterPreFilled': {
    title: 'Filtre à huile, pré-rempli',
    ask: 'Filtre à huile : remplissez-le, huilez le joint, montez-le. Dites filtre monté.',
  },
  'fill.oilFilterDry': {
    title: 'Filtre à huile, à sec',
    ask: 'Filtre à huile : montez-le à sec, huilez seulement le joint. Dites filtre monté.',
  },
  'fill.oilQuantity': {
    title: 'Huile versée',
    ask: 'Huile : versez {capacity}. Combien en avez-vous mis, en {unit} ?',
  },
  'fill.oilLevel': {
    title: "Niveau d'huile",
    ask: "Niveau d'huile à la jauge entre les repères ? Dites bon niveau.",
  },
  'fill.fuelInTank': {
    title: 'Gazole dans le réservoir',
    ask: 'Gazole : combien dans le réservoir maintenant, en {unit} ?',
  },
  'fill.biodieselShare': { title: 'Part de biodiesel', ask: 'Part de biodiesel, en pour cent ?' },
  'fill.fuelGrade': {
    title: 'Gazole pour le froid',
    ask: 'Gazole pour {coldest} : {advice} Dites gazole conforme.',
  },
  'fill.firstFilterPreFilled': {
    title: 'Premier filtre à gazole, pré-rempli',
    ask: 'Premier filtre à gazole : remplissez-le de gazole propre, huilez le joint, montez-le. Dites filtre monté.',
  },
  'fill.firstFilterDry': {
    title: 'Premier filtre à gazole, à sec',
    ask: 'Filtre à gazole : rien derrière lui, montez-le donc à sec. Huilez le joint. Dites filtre monté.',
  },
  'fill.secondFilterPreFilled': {
    title: 'Second filtre à gazole, pré-rempli',
    ask: 'Second filtre à gazole : remplissez-le de gazole propre, huilez le joint, montez-le. Dites filtre monté.',
  },
  'fill.secondFilterDry': {
    title: 'Second filtre à gazole, à sec',
    ask: 'Second filtre à gazole : montez-le à sec, huilez seulement le joint. Dites filtre monté.',
  },
  'fill.steeringFull': {
    title: 'Direction assistée',
    ask: 'Direction : liquide au repère à froid. Dites direction au niveau.',
  },

  'prime.strokes': {
    title: 'Coups de pompe',
    ask: "Amorçage : actionnez la pompe à main jusqu'à ce qu'elle soit dure. Combien de coups ?",
  },
  'prime.firm': { title: 'Pompe dure', ask: 'La pompe résiste ? Dites pompe dure.' },
  'prime.screwedHome': {
    title: 'Pompe revissée',
    ask: 'Revissez la pompe à fond. Dites pompe revissée.',
  },
  'prime.electric': { title: "Pompe d'amorçage", ask: "Pompe d'amorçage : laissez-la marcher." },
  'prime.electricBled': {
    title: "La pompe d'amorçage n'aspire plus d'air",
    ask: "Pompe d'amorçage : plus de bulles, son régulier ? Dites plus d'air.",
  },
  'prime.noWeeps': {
    title: 'Aucun suintement',
    ask: 'Équipier : filtres et pompe secs, rien ne suinte ? Dites aucun suintement.',
  },

  'walkRound.sensors': { title: 'Capteurs branchés', ask: 'Capteurs.' },
  'walkRound.hoses': {
    title: 'Durites et colliers',
    ask: 'Durites : chacune passée sur son bourrelet, chaque collier serré derrière le bourrelet ? Dites durites bonnes.',
  },
  'walkRound.boots': {
    title: "Manchons d'admission",
    ask: 'Manchons : admission et suralimentation bien emboîtés et serrés ? Dites manchons bons.',
  },
  'walkRound.belts': {
    title: 'Courroies',
    ask: 'Courroies dans leurs gorges et tendues ? Dites courroies bonnes.',
  },
  'walkRound.tools': {
    title: 'Outils sortis',
    ask: 'Outils et chiffons sortis du compartiment, ventilateur libre ? Dites aucun outil oublié.',
  },
  'walkRound.wiring': {
    title: 'Câblage',
    ask: 'Câblage loin de la chaleur et de tout ce qui bouge ? Dites câblage bon.',
  },
  'walkRound.fasteners': {
    title: 'Boulons marqués',
    ask: 'Boulons serrés et marqués ? Dites boulons marqués.',
  },

  'walkRound.rawWater': {
    title: 'Eau brute fermée',
    ask: "Eau brute : {at} fermée tant qu'il tourne sans allumer, sinon l'échappement se remplit. Dites vanne fermée.",
  },

  'barOver.isolated': {
    title: 'Démarreur isolé',
    ask: 'Avant de tourner à la main : clé retirée et dans votre poche, batterie ou démarreur débranché. Dites démarreur isolé.',
  },
  'barOver.prelube': {
    title: 'Galeries remplies à la pompe',
    ask: "Galeries : pompez de l'huile par {port} jusqu'à la pression. Dites huile pompée.",
  },
  'barOver.turboFeed': {
    title: 'Turbo huilé',
    ask: 'Turbo : huile dans son arrivée, roue tournée à la main, conduite remontée. Dites turbo huilé.',
  },
  'barOver.turned': {
    title: 'Tourné à la main',
    ask: 'À la barre, deux tours complets dans le sens de marche. Dites rotation libre, ou ça bloque.',
  },
  'barOver.toolOut': {
    title: 'Barre retirée',
    ask: 'Barre retirée, cache remis, démarreur et batterie rebranchés. Dites barre retirée.',
  },

  'noFuelCrank.disabled': {
    title: 'Injection neutralisée',
    ask: "Neutralisez l'injection. {how} Dites injection neutralisée.",
  },
  'noFuelCrank.proved': {
    title: 'Neutralisation vérifiée',
    ask: 'Vérifiez. {proof} Dites neutralisation vérifiée.',
  },
  'noFuelCrank.batteryLoad': {
    title: 'Batterie en charge',
    ask: 'Batterie sous débit, testeur ou phares et soufflante une demi-minute : tension minimale ?',
  },
  'noFuelCrank.untilPressure': {
    title: "Démarreur jusqu'à la pression d'huile",
    ask: "{before} Démarreur sans carburant. Pression d'huile attendue après environ {expected} de démarreur.",
  },
  'noFuelCrank.holds': {
    title: 'La pression tient',
    ask: "Encore un essai court : la pression d'huile doit revenir et tenir.",
  },
  'noFuelCrank.voltage': {
    title: 'Tension minimale au démarreur',
    ask: 'Équipier : tension minimale de la batterie pendant le démarreur ?',
  },
  'noFuelCrank.oilLevel': {
    title: "Niveau d'huile, galeries pleines",
    ask: "Les galeries sont pleines. Jauge d'huile : complétez entre les repères. Dites bon niveau.",
  },
  'noFuelCrank.restored': {
    title: 'Injection rétablie',
    ask: "Rétablissez l'injection : tout ce qui était neutralisé est rebranché. Dites injection rétablie.",
  },

  'keyOn.battery': { title: 'Batterie au repos', ask: 'Tension de la batterie au repos ?' },
  'keyOn.keyOn': { title: 'Contact mis', ask: 'Mettez le contact, sans démarrer. Dites contact mis.' },
  'keyOn.lamps': {
    title: 'Voyants, contact mis',
    ask: 'Voyants, contact mis.',
  },
  'keyOn.heaterHold': {
    title: "Réchauffeur d'admission",
    ask: "Réchauffeur d'admission : attendez le voyant.",
  },
  'keyOn.heaterDone': {
    title: 'Voyant de préchauffage éteint',
    ask: 'Voyant de préchauffage : est-il éteint ? Dites voyant éteint.',
  },
  'keyOn.regeneration': {
    title: 'Régénération bloquée',
    ask: "Dépollution : régénération bloquée, pour qu'aucun échappement ne rougisse aujourd'hui. Dites régénération bloquée.",
  },
  'keyOn.rawWater': {
    title: 'Eau brute toujours fermée',
    ask: "Eau brute : {at} fermée jusqu'à l'allumage. Dites vanne fermée.",
  },
  'keyOn.faults': {
    title: 'Codes de défaut',
    ask: 'Codes de défaut : dites pas de défaut, ou lire un code.',
  },

  'firstFire.crank': { title: 'Premier démarrage', ask: '{before} Premier démarrage.' },
  'firstFire.oilPressure': {
    title: "La pression d'huile s'affiche",
    ask: "Pression d'huile ? Dites bonne pression.",
  },
  'firstFire.rawWater': {
    title: "L'eau brute coule",
    ask: "Ouvrez {at} maintenant. De l'eau à l'échappement ? Dites l'eau coule, ou échappement sec.",
  },
  'firstFire.eyes': {
    title: 'Yeux et oreilles',
    ask: 'Équipier : loin du ventilateur, une main à la coupure. Regardez et écoutez.',
  },
  'firstFire.lamps': {
    title: 'Voyants, moteur tournant',
    ask: 'Voyants, moteur tournant.',
  },
  'firstFire.transient': {
    title: 'Défaut surveillé',
    ask: 'Défaut surveillé : {fault}. A-t-il disparu ? Dites défaut disparu.',
  },

  'firstRun.run': {
    title: 'Première marche courte',
    ask: 'Première marche courte, à vide. Regardez, écoutez, ne touchez rien.',
  },
  'firstRun.keyOff': {
    title: 'Contact coupé après la première marche',
    ask: 'Coupez le contact pour tout regarder. Quand plus rien ne tourne, dites moteur éteint.',
  },
  'firstRun.drain': { title: "L'huile redescend", ask: "Laissez l'huile redescendre au carter." },
  'firstRun.oilLevel': {
    title: "Niveau d'huile après la première marche",
    ask: "Jauge d'huile : entre les repères ? Dites bon niveau.",
  },
  'firstRun.look': {
    title: 'Tour après la première marche',
    ask: 'Équipier : faites le tour, moteur immobile. Le bouchon reste fermé.',
  },
  'firstRun.rawWater': {
    title: 'Eau brute refermée',
    ask: "Eau brute : {at} refermée jusqu'à l'allumage. Dites vanne fermée.",
  },
  'firstRun.restart': { title: 'Second démarrage', ask: 'Second démarrage. Contact, attendez le voyant.' },
  'firstRun.oilPressure': {
    title: "La pression d'huile revient",
    ask: "Pression d'huile ? Dites bonne pression.",
  },

  'firstRun.rawWaterOpen': {
    title: "L'eau brute coule de nouveau",
    ask: "Ouvrez {at} maintenant. De l'eau à l'échappement ? Dites l'eau coule, ou échappement sec.",
  },

  'checks.idle': { title: 'Régime de ralenti', ask: 'Régime de ralenti, cinq lectures. La première ?' },
  'checks.idleSteady': {
    title: 'Ralenti stable',
    ask: 'Le ralenti est régulier, sans pompage ? Dites ralenti stable.',
  },
  'checks.fixedSpeed': { title: 'Régime à vide', ask: 'Régime à vide, cinq lectures. La première ?' },
  'checks.speedSteady': {
    title: 'Régime stable',
    ask: 'Le régime est régulier, sans pompage ? Dites régime stable.',
  },
  'checks.oilPressure': { title: "Pression d'huile au ralenti", ask: "Pression d'huile, en {unit} ?" },
  'checks.charging': { title: 'Tension de charge', ask: 'Tension de charge ?' },
  'checks.coolant': {
    title: 'Température du liquide',
    ask: 'Température du liquide de refroidissement, en {unit} ?',
  },
  'checks.leaks': {
    title: 'Recherche de fuites',
    ask: 'Équipier : cherchez les fuites avec une feuille de papier, jamais à la main.',
  },

  'warmUp.watch': {
    title: 'Mise en température',
    ask: 'Température du liquide, en {unit} ? Quand la durite supérieure chauffe, dites thermostat ouvert.',
  },
  'warmUp.fastIdle': {
    title: 'Mise en température au ralenti accéléré',
    ask: 'À {speed}, tenus : température du liquide, en {unit} ? Quand la durite supérieure chauffe, dites thermostat ouvert.',
  },
  'warmUp.steeringLocks': {
    title: 'Direction de butée à butée',
    ask: "Direction : bouchon ôté, lentement de butée à butée jusqu'à ne plus voir de bulles. Dites aucune bulle.",
  },
  'warmUp.levels': {
    title: 'Niveaux, moteur tournant',
    ask: "Niveaux : direction et vase d'expansion entre les repères ? Dites niveaux bons.",
  },

  'warmUp.bottle': {
    title: "Vase d'expansion",
    ask: "Vase d'expansion entre les repères ? Dites niveaux bons.",
  },

  'sweeps.first': {
    title: 'Première montée',
    ask: "Montez doucement à {speed} et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.second': {
    title: 'Deuxième montée',
    ask: "Jusqu'à {speed}, doucement, et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.third': {
    title: 'Troisième montée',
    ask: "Jusqu'à {speed}, doucement, et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.fourth': {
    title: 'Quatrième montée',
    ask: "Jusqu'à {speed}, doucement, et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.fifth': {
    title: 'Cinquième montée',
    ask: "Jusqu'à {speed}, doucement, et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.sixth': {
    title: 'Sixième montée',
    ask: "Jusqu'à {speed}, doucement, et tenez. Pression d'huile, en {unit} ?",
  },
  'sweeps.backToIdle': {
    title: 'Retour au ralenti',
    ask: 'Revenez au ralenti. Dites retour au ralenti.',
  },
  'sweeps.fixedPressure': {
    title: "Pression d'huile à son régime, à chaud",
    ask: "À son régime, à chaud. Pression d'huile, en {unit} ?",
  },
  'sweeps.faults': {
    title: 'Nouveaux défauts',
    ask: 'Nouveaux codes : dites pas de défaut, ou lire un code.',
  },

  'shutdown.settle': {
    title: 'Repos au ralenti',
    ask: 'Repos : laissez-le au ralenti pour que le turbo refroidisse.',
  },
  'shutdown.settleUnloaded': {
    title: 'Repos à vide',
    ask: 'Repos : laissez-le à vide pour que le turbo refroidisse.',
  },
  'shutdown.keyOff': {
    title: 'Contact coupé',
    ask: 'Coupez le contact. Quand plus rien ne tourne, dites moteur éteint.',
  },
  'shutdown.coolant': {
    title: 'Température avant de couper',
    ask: 'Avant de couper le contact : température du liquide, en {unit} ?',
  },
  'shutdown.firstSoak': {
    title: 'Coup de chaleur',
    ask: 'Coup de chaleur : la pression monte maintenant. Restez loin des durites, le bouchon reste fermé.',
  },
  'shutdown.firstLook': {
    title: 'Premier regard',
    ask: 'Équipier : premier regard, à distance.',
  },
  'shutdown.secondSoak': soakGoesOn,
  'shutdown.secondLook': { title: 'Deuxième regard', ask: 'Équipier : deuxième regard.' },
  'shutdown.thirdSoak': soakGoesOn,
  'shutdown.thirdLook': { title: 'Troisième regard', ask: 'Équipier : troisième regard.' },
  'shutdown.fourthSoak': soakGoesOn,
  'shutdown.fourthLook': { title: 'Quatrième regard', ask: 'Équipier : quatrième regard.' },
  'shutdown.fifthSoak': soakGoesOn,
  'shutdown.fifthLook': { title: 'Cinquième regard', ask: 'Équipier : cinquième regard.' },
  'shutdown.sixthSoak': soakGoesOn,
  'shutdown.sixthLook': { title: 'Sixième regard', ask: 'Équipier : sixième regard.' },

  'signOff.cool': {
    title: 'Refroidi',
    ask: "Contrôle à froid. Température du liquide, en {unit} ? Il faut moins de {limit} avant d'ouvrir le bouchon.",
  },
  'signOff.coolantLevel': {
    title: 'Niveau du liquide, à froid',
    ask: 'Niveau du liquide, à froid : complété ? Dites circuit plein.',
  },
  'signOff.oilLevel': {
    title: "Niveau d'huile, à froid",
    ask: "Niveau d'huile, moteur reposé : entre les repères ? Dites bon niveau.",
  },
  'signOff.steeringLevel': {
    title: 'Niveau de direction, à froid',
    ask: 'Niveau de direction ? Dites direction au niveau.',
  },
  'signOff.retorque': {
    title: 'Liste de resserrage',
    ask: 'Liste de resserrage.',
  },
  'signOff.openItems': {
    title: 'Points ouverts',
    ask: "Points ouverts : {items}. Chef d'atelier, dites points notés.",
  },
  'signOff.sign': {
    title: 'Signature',
    ask: "Chef d'atelier : signez ce démarrage. Dites je signe.",
  },
} as const satisfies Record<string, { readonly title: string; readonly ask: string }>;
