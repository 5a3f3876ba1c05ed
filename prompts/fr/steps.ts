const soakGoesOn = {
  title: 'Suite du coup de chaleur',
  ask: 'Le bouchon reste fermé.',
} as const;

/** One entry for each step of the procedure: what it is called, and how it is asked for. Key word first. */
export const steps = {
  'job.card': {
    title: 'Fiche de travail',
    ask: 'Fiche correcte ? {vehicle}, {engine}.< Technicien {technician}, équipier {second}.>',
  },
  'job.makerFirst': {
    title: "Ce qui passe d'abord",
    ask: "Avis. Les instructions du fabricant, la réglementation locale et les règles du métier passent d'abord. Compris ?",
  },
  'job.protection': {
    title: 'Lunettes et gants',
    ask: 'Protections en place ? Lunettes et gants, tous deux.',
  },
  'job.hazards': {
    title: 'Dangers',
    ask: "Avertissement. Loin du ventilateur et des courroies. N'ouvrez jamais un bouchon chaud. Ne cherchez jamais une fuite à la main : du gazole sous la peau est une urgence chirurgicale. Compris ?",
  },
  'job.ventilation': {
    title: "Extraction des gaz d'échappement",
    ask: "L'air est bon ? Tuyau sur l'échappement, extraction en marche. Sans elle, seulement dehors : les gaz tuent.",
  },
  'job.extinguisher': {
    title: 'Extincteur',
    ask: 'Extincteur en place ? À portée de main.',
  },
  'job.autoStart': {
    title: 'Démarrage automatique verrouillé',
    ask: 'Démarrage verrouillé ? {at}, étiqueté.',
  },
  'job.breaker': {
    title: 'Disjoncteur ouvert',
    ask: "Disjoncteur ouvert ? {at}, verrouillé et étiqueté, jusqu'à la signature.",
  },
  'job.gearLever': {
    title: 'Bateau amarré',
    ask: "Levier au neutre ? {at} ; bateau amarré, personne près de l'hélice.",
  },
  'job.coupling': { title: 'Machine débrayée', ask: 'Machine débrayée ? {at}, rien ne doit être entraîné.' },
  'job.parked': {
    title: 'Véhicule immobilisé',
    ask: 'Véhicule calé ? Point mort, frein, cales.',
  },
  'job.cutOff': {
    title: "Coupure d'urgence",
    ask: 'Coupure connue ? {how}',
  },
  'job.ambient': { title: "Température de l'air", ask: "Température de l'air, {unit} ?" },
  'job.coldestNight': {
    title: 'Nuit la plus froide attendue',
    ask: 'Nuit la plus froide<, {unit}> ?',
  },
  'job.altitude': { title: 'Altitude', ask: 'Altitude, {unit} ?' },
  'job.figures': {
    title: 'Air, nuit et altitude',
    ask: 'Air {air}, nuit la plus froide {coldest}, altitude {altitude}. Correct ?',
  },
  'job.stopTechnician': {
    title: "Mot d'urgence, technicien",
    ask: "Technicien : le mot d'urgence, maintenant. {words}",
  },
  'job.stopSecond': {
    title: "Mot d'urgence, équipier",
    ask: "Équipier : le mot d'urgence, maintenant. {words}",
  },

  'fill.jacketHeater': {
    title: 'Réchauffeur coupé',
    ask: "Réchauffeur coupé ? {at}, jusqu'à la remise en service : à sec, il grille.",
  },
  'fill.coolantCool': {
    title: 'Assez froid pour le liquide',
    ask: 'Liquide<, {unit}> ? Au-dessus de {limit}, le bouchon reste fermé.',
  },
  'fill.coolantMix': {
    title: 'Mélange de refroidissement',
    ask: "{concentrate} de concentré, {glycol}, {water} d'eau<, jusqu'à {freeze}>. Mélange fait ?",
  },
  'fill.coolantFilled': {
    title: 'Circuit rempli',
    ask: 'Remplissez lentement, purges et robinet de chauffage ouverts. Circuit plein ?',
  },
  'fill.coolantBleed': { title: 'Purge du circuit', ask: 'Purgez le circuit.' },
  'fill.coolantBled': {
    title: 'Circuit sans air',
    ask: 'Purge terminée ? Niveau stable.',
  },
  'fill.coolantFreezePoint': {
    title: 'Point de congélation mesuré',
    ask: 'Point de congélation mesuré<, {unit}> ?',
  },
  'fill.oilGrade': {
    title: "Grade d'huile",
    ask: 'Huile conforme ? Pour {coldest} : {grades}.',
  },
  'fill.oilFilterPreFilled': {
    title: 'Filtre à huile, pré-rempli',
    ask: 'Filtre à huile rempli, joint huilé. Filtre monté ?',
  },
  'fill.oilFilterDry': {
    title: 'Filtre à huile, à sec',
    ask: 'Filtre à huile à sec, joint huilé. Filtre monté ?',
  },
  'fill.oilQuantity': {
    title: 'Huile versée',
    ask: "Versez {capacity} d'huile. Combien en avez-vous mis<, {unit}> ?",
  },
  'fill.oilLevel': {
    title: "Niveau d'huile",
    ask: 'Bon niveau ? Jauge, entre les repères.',
  },
  'fill.fuelInTank': {
    title: 'Gazole dans le réservoir',
    ask: 'Gazole dans le réservoir<, {unit}> ?',
  },
  'fill.biodieselShare': { title: 'Part de biodiesel', ask: 'Biodiesel, pour cent ?' },
  'fill.fuelGrade': {
    title: 'Gazole pour le froid',
    ask: '{tank} au réservoir, {share} de biodiesel. Pour {coldest} : {advice}. Gazole conforme ?',
  },
  'fill.firstFilterPreFilled': {
    title: 'Premier filtre à gazole, pré-rempli',
    ask: 'Premier filtre à gazole rempli de gazole propre, joint huilé. Filtre monté ?',
  },
  'fill.firstFilterDry': {
    title: 'Premier filtre à gazole, à sec',
    ask: 'Filtre à gazole : rien derrière lui, donc à sec. Joint huilé. Filtre monté ?',
  },
  'fill.secondFilterPreFilled': {
    title: 'Second filtre à gazole, pré-rempli',
    ask: 'Second filtre à gazole rempli de gazole propre, joint huilé. Filtre monté ?',
  },
  'fill.secondFilterDry': {
    title: 'Second filtre à gazole, à sec',
    ask: 'Second filtre à gazole à sec, joint huilé. Filtre monté ?',
  },
  'fill.steeringFull': {
    title: 'Direction assistée',
    ask: 'Direction au niveau ? Au repère à froid.',
  },

  'prime.strokes': {
    title: 'Coups de pompe',
    ask: "Actionnez la pompe à main jusqu'à ce qu'elle soit dure. Combien de coups ?",
  },
  'prime.firm': { title: 'Pompe dure', ask: 'Pompe dure ?' },
  'prime.screwedHome': {
    title: 'Pompe revissée',
    ask: 'Pompe revissée ?',
  },
  'prime.electric': { title: "Pompe d'amorçage", ask: "Pompe d'amorçage : laissez-la marcher." },
  'prime.electricBled': {
    title: "Pompe d'amorçage sans air",
    ask: 'Purge terminée ? Son régulier.',
  },
  'prime.noWeeps': {
    title: 'Aucun suintement',
    ask: 'Équipier : aucun suintement ? Filtres et pompe.',
  },

  'walkRound.sensors': { title: 'Capteurs branchés', ask: '<Capteurs.>' },
  'walkRound.hoses': {
    title: 'Durites et colliers',
    ask: 'Durites bonnes ? Sur leur bourrelet, colliers derrière et serrés.',
  },
  'walkRound.boots': {
    title: "Manchons d'admission",
    ask: 'Manchons bons ? Admission et suralimentation, emboîtés et serrés.',
  },
  'walkRound.belts': {
    title: 'Courroies',
    ask: 'Courroies bonnes ? Dans leurs gorges et tendues.',
  },
  'walkRound.tools': {
    title: 'Outils sortis',
    ask: 'Aucun outil oublié ? Chiffons sortis aussi, ventilateur libre.',
  },
  'walkRound.wiring': {
    title: 'Câblage',
    ask: 'Câblage bon ? Loin de la chaleur et de ce qui bouge.',
  },
  'walkRound.fasteners': {
    title: 'Boulons marqués',
    ask: "Boulons marqués ? Serrés d'abord.",
  },

  'walkRound.rawWater': {
    title: 'Eau brute fermée',
    ask: "Vanne fermée ? {at}, sinon l'échappement se remplit.",
  },
  'walkRound.strainer': {
    title: "Crépine d'eau brute",
    ask: "Circuit d'eau bon ? Crépine propre, turbine de pompe entière, vanne libre, durites serrées.",
  },
  'barOver.isolated': {
    title: 'Démarreur isolé',
    ask: 'Démarreur isolé ? Batterie ou démarreur débranché, {off}.',
  },
  'barOver.prelube': {
    title: 'Galeries remplies à la pompe',
    ask: "Huile pompée ? Par {port}, jusqu'à la pression.",
  },
  'barOver.turboFeed': {
    title: 'Turbo huilé',
    ask: 'Turbo huilé ? Huile dans son arrivée, roue tournée à la main, conduite remontée.',
  },
  'barOver.turned': {
    title: 'Tourné à la main',
    ask: 'À la barre, deux tours complets, sens de marche. Rotation libre, ou ça bloque ?',
  },
  'barOver.toolOut': {
    title: 'Barre retirée',
    ask: 'Barre retirée ? Cache remis, démarreur et batterie rebranchés.',
  },

  'noFuelCrank.disabled': {
    title: 'Injection neutralisée',
    ask: '{how} Injection neutralisée ?',
  },
  'noFuelCrank.proved': {
    title: 'Neutralisation vérifiée',
    ask: '{proof} Neutralisation vérifiée ?',
  },
  'noFuelCrank.batteryLoad': {
    title: 'Batterie en charge',
    ask: 'Testeur de charge, moitié du courant de démarrage à froid, quinze secondes. Tension minimale, ou pas de testeur ?',
  },
  'noFuelCrank.batteryRest': {
    title: 'Batterie au repos, pas de testeur',
    ask: 'Alors au repos, tout éteint. Tension de la batterie ?',
  },
  'noFuelCrank.manual': {
    title: 'Mode manuel',
    ask: "Mode manuel ? {at}, déverrouillé par qui l'a verrouillé ; jamais automatique, l'étiquette reste.",
  },
  'noFuelCrank.untilPressure': {
    title: "Démarreur jusqu'à la pression d'huile",
    ask: "{before} La pression d'huile prend environ {expected}.",
  },
  'noFuelCrank.holds': {
    title: 'La pression tient',
    ask: '{before} Encore une fois, court : la pression doit revenir et tenir.',
  },
  'noFuelCrank.voltage': {
    title: 'Tension minimale au démarreur',
    ask: 'Équipier : tension minimale pendant le démarreur ?',
  },
  'noFuelCrank.oilLevel': {
    title: "Niveau d'huile, galeries pleines",
    ask: 'Les galeries sont pleines. Complétez. Bon niveau ?',
  },
  'noFuelCrank.restored': {
    title: 'Injection rétablie',
    ask: 'Injection rétablie ? Tout est rebranché, les codes laissés sont effacés.',
  },

  'keyOn.battery': { title: 'Batterie au repos', ask: 'Tension de la batterie au repos ?' },
  'keyOn.lamps': {
    title: 'Voyants, sous tension',
    ask: '{on}, sans démarrer.< Voyants.>',
  },
  'keyOn.heaterHold': {
    title: 'Préchauffage',
    ask: 'Préchauffage : coupez et remettez, attendez le voyant.',
  },
  'keyOn.heaterDone': {
    title: 'Voyant de préchauffage éteint',
    ask: 'Préchauffage : voyant éteint ?',
  },
  'keyOn.regeneration': {
    title: 'Régénération bloquée',
    ask: 'Régénération bloquée ? Inhibée par son bouton ou par la valise.',
  },
  'keyOn.rawWater': { title: 'Eau brute toujours fermée', ask: "Vanne fermée ? {at}, jusqu'à l'allumage." },
  'keyOn.faults': {
    title: 'Codes de défaut',
    ask: 'Codes : pas de défaut, ou lire un code ?',
  },

  'firstFire.crank': { title: 'Premier démarrage', ask: '{before}' },
  'firstFire.oilPressure': {
    title: "La pression d'huile s'affiche",
    ask: "Bonne pression d'huile ?",
  },
  'firstFire.rawWater': {
    title: "L'eau brute coule",
    ask: "Équipier : ouvrez {at}. L'eau coule, ou échappement sec ?",
  },
  'firstFire.eyes': {
    title: 'Yeux et oreilles',
    ask: 'Équipier : loin du ventilateur, une main à la coupure. Regardez et écoutez.',
  },
  'firstFire.lamps': {
    title: 'Voyants, moteur tournant',
    ask: '<Voyants.>',
  },
  'firstFire.transient': {
    title: 'Défaut surveillé',
    ask: '{fault} : défaut disparu ?',
  },
  'firstFire.warningLamp': { title: "Voyant d'alerte, moteur tournant", ask: "<Voyant d'alerte.>" },

  'firstRun.run': {
    title: 'Première marche courte',
    ask: 'Laissez au ralenti. Regardez, écoutez, ne touchez rien.',
  },
  'firstRun.runUnloaded': {
    title: 'Première marche courte',
    ask: 'Laissez-le à vide. Regardez, écoutez, ne touchez rien.',
  },
  'firstRun.keyOff': {
    title: 'Éteint après la première marche',
    ask: '{off}. Moteur éteint, plus rien ne tourne ?',
  },
  'firstRun.drain': { title: "L'huile redescend", ask: "Laissez l'huile redescendre." },
  'firstRun.oilLevel': {
    title: "Niveau d'huile après la première marche",
    ask: 'Bon niveau ? Jauge, entre les repères.',
  },
  'firstRun.look': {
    title: 'Tour après la première marche',
    ask: 'Équipier : faites le tour. Le bouchon reste fermé.',
  },
  'firstRun.rawWater': { title: 'Eau brute refermée', ask: "Vanne fermée ? {at}, jusqu'à l'allumage." },
  'firstRun.restart': {
    title: 'Second démarrage',
    ask: 'Second démarrage. {on}, attendez le voyant. {before}',
  },
  'firstRun.oilPressure': {
    title: "La pression d'huile revient",
    ask: "Bonne pression d'huile ?",
  },

  'firstRun.rawWaterOpen': {
    title: "L'eau brute coule de nouveau",
    ask: "Équipier : ouvrez {at}. L'eau coule, ou échappement sec ?",
  },
  'checks.idle': { title: 'Régime de ralenti', ask: 'Ralenti, une demi-minute. Le plus bas, ou pompage ?' },
  'checks.fixedSpeed': {
    title: 'Régime à vide',
    ask: 'Régime à vide, une demi-minute. Le plus bas, ou pompage ?',
  },
  'checks.oilPressure': { title: "Pression d'huile au ralenti", ask: "Pression d'huile, {unit} ?" },
  'checks.charging': { title: 'Tension de charge', ask: 'Tension de charge ?' },
  'checks.coolant': {
    title: 'Température du liquide',
    ask: 'Température du liquide<, {unit}> ?',
  },
  'checks.leaks': {
    title: 'Recherche de fuites',
    ask: 'Équipier : cherchez les fuites au papier, jamais à la main.',
  },

  'warmUp.watch': {
    title: 'Mise en température',
    ask: 'Liquide<, {unit}> ? Thermostat ouvert, dès que la durite supérieure chauffe.',
  },
  'warmUp.fastIdle': {
    title: 'Mise en température au ralenti accéléré',
    ask: 'Tenez {speed}. Liquide<, {unit}> ? Thermostat ouvert, dès que la durite supérieure chauffe.',
  },
  'warmUp.hose': {
    title: 'Thermostat senti ouvert',
    ask: "Thermostat ouvert ? Durite supérieure : au thermomètre infrarouge, la main seulement par l'extérieur, jamais près du ventilateur.",
  },
  'warmUp.steeringLocks': {
    title: 'Direction de butée à butée',
    ask: 'Au ralenti : bouchon de direction ôté, lentement de butée à butée. Aucune bulle ?',
  },
  'warmUp.levels': {
    title: 'Niveaux, moteur tournant',
    ask: "Niveaux bons ? Direction au repère. Vase d'expansion à l'œil seulement : son bouchon reste fermé.",
  },

  'warmUp.bottle': {
    title: "Vase d'expansion",
    ask: "Niveaux bons ? Vase d'expansion à l'œil seulement : bouchon fermé.",
  },
  'sweeps.first': {
    title: 'Première montée',
    ask: 'Doucement à {speed}, tenez. {ask}',
  },
  'sweeps.second': {
    title: 'Deuxième montée',
    ask: "Jusqu'à {speed}. {ask}",
  },
  'sweeps.third': {
    title: 'Troisième montée',
    ask: "Jusqu'à {speed}. {ask}",
  },
  'sweeps.fourth': {
    title: 'Quatrième montée',
    ask: "Jusqu'à {speed}. {ask}",
  },
  'sweeps.fifth': {
    title: 'Cinquième montée',
    ask: "Jusqu'à {speed}. {ask}",
  },
  'sweeps.sixth': {
    title: 'Sixième montée',
    ask: "Jusqu'à {speed}. {ask}",
  },
  'sweeps.fixedPressure': {
    title: "Pression d'huile à son régime, à chaud",
    ask: "Pression d'huile à son régime, à chaud<, {unit}> ?",
  },
  'sweeps.newFaults': { title: 'Nouveaux défauts', ask: 'Nouveaux codes : pas de défaut, ou lire un code ?' },
  'sweeps.faults': {
    title: 'Nouveaux défauts',
    ask: 'Revenez au ralenti. Nouveaux codes : pas de défaut, ou lire un code ?',
  },

  'shutdown.settle': {
    title: 'Repos au ralenti',
    ask: 'Laissez au ralenti, le turbo refroidit.',
  },
  'shutdown.settleUnloaded': {
    title: 'Repos à vide',
    ask: 'Laissez-le à vide, pour que le turbo refroidisse.',
  },
  'shutdown.keyOff': {
    title: 'Moteur coupé',
    ask: '{off}. Moteur éteint, plus rien ne tourne ?',
  },
  'shutdown.coolant': {
    title: 'Température avant de couper',
    ask: 'Liquide avant de couper<, {unit}> ?',
  },
  'shutdown.firstSoak': {
    title: 'Coup de chaleur',
    ask: 'Coup de chaleur : la pression monte. Loin des durites, le bouchon reste fermé.',
  },
  'shutdown.firstLook': {
    title: 'Premier regard',
    ask: 'Équipier : regardez, à distance.',
  },
  'shutdown.secondSoak': soakGoesOn,
  'shutdown.secondLook': { title: 'Deuxième regard', ask: 'Équipier : regardez de nouveau.' },
  'shutdown.thirdSoak': soakGoesOn,
  'shutdown.thirdLook': { title: 'Troisième regard', ask: 'Équipier : regardez de nouveau.' },
  'shutdown.fourthSoak': soakGoesOn,
  'shutdown.fourthLook': { title: 'Quatrième regard', ask: 'Équipier : regardez de nouveau.' },
  'shutdown.fifthSoak': soakGoesOn,
  'shutdown.fifthLook': { title: 'Cinquième regard', ask: 'Équipier : regardez de nouveau.' },
  'shutdown.sixthSoak': soakGoesOn,
  'shutdown.sixthLook': { title: 'Sixième regard', ask: 'Équipier : regardez de nouveau.' },

  'signOff.cool': {
    title: 'Refroidi',
    ask: 'Liquide<, {unit}> ? Au-dessus de {limit} le bouchon reste fermé.',
  },
  'signOff.coolantLevel': {
    title: 'Niveau du liquide, à froid',
    ask: 'Circuit plein, à froid ?',
  },
  'signOff.oilLevel': {
    title: "Niveau d'huile, à froid",
    ask: 'Bon niveau ? Jauge, entre les repères.',
  },
  'signOff.steeringLevel': {
    title: 'Niveau de direction, à froid',
    ask: 'Direction au niveau ?',
  },
  'signOff.retorque': {
    title: 'Liste de resserrage',
    ask: 'Liste de resserrage.',
  },
  'signOff.handBack': {
    title: 'Remise en service',
    ask: "{clear} Par qui l'a verrouillé : {items}. Tout est rendu ?",
  },
  'signOff.openItems': {
    title: 'Points ouverts',
    ask: "Chef d'atelier : points ouverts : {items}. Points notés ?",
  },
  'signOff.sign': {
    title: 'Signature',
    ask: "Chef d'atelier : pour signer, dites je signe.",
  },
} as const satisfies Record<string, { readonly title: string; readonly ask: string }>;
