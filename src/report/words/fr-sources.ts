/**
 * Sources of rules in French, by the very words in which a record keeps them: a source that another version
 * words otherwise is told as the record has it.
 */
export const frenchSources: Readonly<Record<string, string>> = {
  'range in which the calculations behind the gates hold':
    'plage dans laquelle les calculs derrière les conditions sont valables',
  'figure of the engine profile': 'valeur du profil du moteur',
  'one and a half times the fastest idle of the engine profile':
    'une fois et demie le ralenti le plus rapide du profil du moteur',
  'Volume balance; limits of the trade: ASTM D975 up to B5, ASTM D7467 B6 to B20':
    "bilan des volumes ; limites du métier : ASTM D975 jusqu'à B5, ASTM D7467 de B6 à B20",
  'Load-test table of vehicle service manuals: 15 s at half the cold-cranking current, 9.6 V at 21 degC to 8.5 V at -18 degC':
    "table d'essai en charge des manuels d'atelier : 15 s à la moitié du courant de démarrage à froid, de 9,6 V à 21 °C à 8,5 V à −18 °C",
  'Battery Council International: open-circuit voltage against state of charge at 26.7 degC; 0.2 mV/K per cell for other temperatures (from memory)':
    "Battery Council International : tension à vide selon l'état de charge à 26,7 °C ; 0,2 mV/K par élément pour d'autres températures (de mémoire)",
  "The engine profile's table, straight lines between its rows: common practice, no published source":
    'table du profil du moteur, droites entre ses lignes : usage du métier, sans source publiée',
  'seconds allowed by the engine profile; about 10 to 15 s is common practice, no published source':
    'secondes permises par le profil du moteur ; environ 10 à 15 s est usage du métier, sans source publiée',
  'least-squares line (closed form), checked against NIST StRD Norris; limits from the engine profile':
    'droite des moindres carrés (forme close), vérifiée sur NIST StRD Norris ; limites du profil du moteur',
  'table of the engine profile, straight lines between its points (closed form)':
    'table du profil du moteur, droites entre ses points (forme close)',
  'Raoult: boils where water alone would boil under pressure / mole share of water; IAPWS-IF97; ISO 2533; ASHRAE Fundamentals (2009), chapter 31':
    "Raoult : bout là où l'eau seule bouillirait sous pression / fraction molaire d'eau ; IAPWS-IF97 ; ISO 2533 ; ASHRAE Fundamentals (2009), chapitre 31",
  'Setpoint and tolerance from the engine profile at 25 degC, -3 mV/K per cell: common practice, no published source':
    'consigne et tolérance du profil du moteur à 25 °C, −3 mV/K par élément : usage du métier, sans source publiée',
  'boiling point of water by IAPWS-IF97 (coolant mixed with glycol boils hotter, so this errs to the safe side) at ISO 2533 atmosphere plus cap pressure; rise after key-off from the engine profile':
    "point d'ébullition de l'eau selon IAPWS-IF97 (le liquide avec glycol bout plus haut, l'écart est donc du côté sûr) à l'atmosphère ISO 2533 plus la pression du bouchon ; hausse après coupure du contact selon le profil du moteur",
  'common practice, no published source: a cap is opened below about 50 degC, never hot':
    "usage du métier, sans source publiée : on n'ouvre un bouchon qu'au-dessous d'environ 50 °C, jamais chaud",
  'Spearman rank correlation, one-sided 5 % critical values (Zar, Biostatistical Analysis); a gear pump delivers in proportion to speed until the relief valve opens (closed form)':
    "corrélation de rang de Spearman, valeurs critiques unilatérales à 5 % (Zar, Biostatistical Analysis) ; une pompe à engrenages débite en proportion du régime jusqu'à l'ouverture du clapet de décharge (forme close)",
  'a pump that delivers more than the engine takes brings the pressure up to its relief valve, from some speed on (closed form)':
    "une pompe qui débite plus que le moteur ne prend porte la pression jusqu'à son clapet de décharge, à partir d'un certain régime (forme close)",
  'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 4, straight lines between its rows':
    'ASHRAE Handbook, Fundamentals (2009), chapitre 31, table 4, droites entre ses lignes',
  'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 5, straight lines between its rows':
    'ASHRAE Handbook, Fundamentals (2009), chapitre 31, table 5, droites entre ses lignes',
  'wide open, a thermostat that works lets out all the heat of an engine without load; tolerance from the engine profile; common practice, no published source':
    "grand ouvert, un thermostat qui marche laisse sortir toute la chaleur d'un moteur sans charge ; tolérance du profil du moteur ; usage du métier, sans source publiée",
  'a sine of standard deviation s swings 2 sqrt(2) s from peak to peak (closed form)':
    "une sinusoïde d'écart type s oscille de 2 racine(2) s de crête à crête (forme close)",
};
