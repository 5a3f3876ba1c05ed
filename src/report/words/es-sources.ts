/**
 * Sources of rules in Spanish, by the very words in which a record keeps them: a source that another version
 * words otherwise is told as the record has it.
 */
export const spanishSources: Readonly<Record<string, string>> = {
  'range in which the calculations behind the gates hold':
    'intervalo en que valen los cálculos de las condiciones',
  'figure of the engine profile': 'valor del perfil del motor',
  'one and a half times the fastest idle of the engine profile':
    'una vez y media el ralentí más rápido del perfil del motor',
  'Volume balance; limits of the trade: ASTM D975 up to B5, ASTM D7467 B6 to B20':
    'balance de volúmenes; límites del oficio: ASTM D975 hasta B5, ASTM D7467 de B6 a B20',
  'Load-test table of vehicle service manuals: 15 s at half the cold-cranking current, 9.6 V at 21 degC to 8.5 V at -18 degC':
    'tabla de prueba con carga de los manuales de taller: 15 s a la mitad de la corriente de arranque en frío, de 9,6 V a 21 °C a 8,5 V a −18 °C',
  'Battery Council International: open-circuit voltage against state of charge at 26.7 degC; 0.2 mV/K per cell for other temperatures (from memory)':
    'Battery Council International: tensión en vacío según el estado de carga a 26,7 °C; 0,2 mV/K por celda a otras temperaturas (de memoria)',
  "The engine profile's table, straight lines between its rows: common practice, no published source":
    'tabla del perfil del motor, rectas entre sus filas: uso del oficio, sin fuente publicada',
  'seconds allowed by the engine profile; about 10 to 15 s is common practice, no published source':
    'segundos que permite el perfil del motor; unos 10 a 15 s es uso del oficio, sin fuente publicada',
  'least-squares line (closed form), checked against NIST StRD Norris; limits from the engine profile':
    'recta de mínimos cuadrados (forma cerrada), comprobada con NIST StRD Norris; límites del perfil del motor',
  'table of the engine profile, straight lines between its points (closed form)':
    'tabla del perfil del motor, rectas entre sus puntos (forma cerrada)',
  'Raoult: boils where water alone would boil under pressure / mole share of water; IAPWS-IF97; ISO 2533; ASHRAE Fundamentals (2009), chapter 31':
    'Raoult: hierve donde el agua sola herviría a presión / fracción molar de agua; IAPWS-IF97; ISO 2533; ASHRAE Fundamentals (2009), capítulo 31',
  'Setpoint and tolerance from the engine profile at 25 degC, -3 mV/K per cell: common practice, no published source':
    'consigna y tolerancia del perfil del motor a 25 °C, −3 mV/K por celda: uso del oficio, sin fuente publicada',
  'boiling point of water by IAPWS-IF97 (coolant mixed with glycol boils hotter, so this errs to the safe side) at ISO 2533 atmosphere plus cap pressure; rise after key-off from the engine profile':
    'punto de ebullición del agua según IAPWS-IF97 (con glicol hierve más arriba, así que el error queda del lado seguro) con la atmósfera ISO 2533 más la presión del tapón; subida tras quitar el contacto según el perfil del motor',
  'common practice, no published source: a cap is opened below about 50 degC, never hot':
    'uso del oficio, sin fuente publicada: un tapón se abre por debajo de unos 50 °C, nunca caliente',
  'Spearman rank correlation, one-sided 5 % critical values (Zar, Biostatistical Analysis); a gear pump delivers in proportion to speed until the relief valve opens (closed form)':
    'correlación de rangos de Spearman, valores críticos unilaterales al 5 % (Zar, Biostatistical Analysis); una bomba de engranajes da en proporción al régimen hasta que abre la válvula de alivio (forma cerrada)',
  'a pump that delivers more than the engine takes brings the pressure up to its relief valve, from some speed on (closed form)':
    'una bomba que da más de lo que el motor toma lleva la presión hasta su válvula de alivio, desde cierto régimen (forma cerrada)',
  'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 4, straight lines between its rows':
    'ASHRAE Handbook, Fundamentals (2009), capítulo 31, tabla 4, rectas entre sus filas',
  'ASHRAE Handbook, Fundamentals (2009), chapter 31, table 5, straight lines between its rows':
    'ASHRAE Handbook, Fundamentals (2009), capítulo 31, tabla 5, rectas entre sus filas',
  'wide open, a thermostat that works lets out all the heat of an engine without load; tolerance from the engine profile; common practice, no published source':
    'abierto del todo, un termostato que funciona deja salir todo el calor de un motor sin carga; tolerancia del perfil del motor; práctica común, sin fuente publicada',
  'a sine of standard deviation s swings 2 sqrt(2) s from peak to peak (closed form)':
    'una sinusoide de desviación típica s oscila 2 raíz(2) s de cresta a cresta (forma cerrada)',
};
