const soakGoesOn = { title: 'Calor residual, otra espera', ask: 'El tapón sigue cerrado.' } as const;

/** One entry for each step of the procedure: what it is called, and how it is asked for. Key word first. */
export const steps = {
  'job.card': {
    title: 'Ficha de trabajo',
    ask: '¿Ficha correcta? {vehicle}, {engine}.< Técnico {technician}, ayudante {second}.>',
  },
  'job.makerFirst': {
    title: 'Lo que va primero',
    ask: 'Aviso. Las instrucciones del fabricante, las normas locales y el oficio con licencia van primero. ¿Entendido?',
  },
  'job.protection': {
    title: 'Gafas y guantes',
    ask: '¿Protección puesta? Gafas y guantes, los dos.',
  },
  'job.hazards': {
    title: 'Peligros',
    ask: 'Advertencia. Lejos del ventilador y de las correas. Nunca abra un tapón caliente. Nunca busque una fuga con la mano: el combustible bajo la piel es una urgencia quirúrgica. ¿Entendido?',
  },
  'job.ventilation': {
    title: 'Extracción de gases',
    ask: '¿Ventilación bien? Manguera en el escape, extracción en marcha. Sin ella solo al aire libre: los gases matan.',
  },
  'job.extinguisher': { title: 'Extintor', ask: '¿Extintor a mano? Al alcance.' },
  'job.autoStart': {
    title: 'Arranque automático bloqueado',
    ask: '¿Arranque bloqueado? {at}, con etiqueta.',
  },
  'job.breaker': {
    title: 'Interruptor abierto',
    ask: '¿Interruptor abierto? {at}, con candado y etiqueta, hasta la firma.',
  },
  'job.gearLever': {
    title: 'Barco amarrado',
    ask: '¿Palanca en neutral? {at}; barco amarrado, nadie cerca de la hélice.',
  },
  'job.coupling': {
    title: 'Máquina desacoplada',
    ask: '¿Máquina desacoplada? {at}: nada debe ser arrastrado.',
  },
  'job.parked': {
    title: 'Vehículo asegurado',
    ask: '¿Vehículo calzado? Punto muerto, freno, calzos.',
  },
  'job.cutOff': { title: 'Corte de emergencia', ask: '¿Corte conocido? {how}' },
  'job.ambient': { title: 'Temperatura del aire', ask: '¿Temperatura del aire, {unit}?' },
  'job.coldestNight': { title: 'Noche más fría esperada', ask: '¿Noche más fría<, {unit}>?' },
  'job.altitude': { title: 'Altitud', ask: '¿Altitud, {unit}?' },
  'job.figures': {
    title: 'Aire, noche y altitud',
    ask: 'Aire {air}, noche más fría {coldest}, altitud {altitude}. ¿Correcto?',
  },
  'job.stopTechnician': {
    title: 'Botón de emergencia, técnico',
    ask: 'Técnico: pulse ahora el botón rojo de su pantalla, o la tecla Escape. En español la voz no detiene nada.',
  },
  'job.stopSecond': {
    title: 'Botón de emergencia, ayudante',
    ask: 'Ayudante: pulse ahora el botón rojo, o la tecla Escape. En español la voz no detiene nada.',
  },

  'fill.jacketHeater': {
    title: 'Calefactor apagado',
    ask: '¿Calefactor apagado? {at}, hasta la devolución: en seco se quema.',
  },
  'fill.coolantCool': {
    title: 'Frío para abrir',
    ask: '¿Refrigerante<, en {unit}>? Por encima de {limit} el tapón sigue cerrado.',
  },
  'fill.coolantMix': {
    title: 'Mezcla de refrigerante',
    ask: '{concentrate} de {glycol}, {water} de agua<, hasta {freeze}>. ¿Mezcla hecha?',
  },
  'fill.coolantFilled': {
    title: 'Refrigerante lleno',
    ask: 'Llene despacio, con purgas y llave de la calefacción abiertas. ¿Circuito lleno?',
  },
  'fill.coolantBleed': { title: 'Purga del refrigerante', ask: 'Purgue el circuito.' },
  'fill.coolantBled': { title: 'Refrigerante sin aire', ask: '¿Purga terminada? Nivel estable.' },
  'fill.coolantFreezePoint': {
    title: 'Punto de congelación medido',
    ask: '¿Punto de congelación medido<, {unit}>?',
  },
  'fill.oilGrade': { title: 'Grado del aceite', ask: '¿Aceite adecuado? Para {coldest}: {grades}.' },
  'fill.oilFilterPreFilled': {
    title: 'Filtro de aceite, lleno',
    ask: 'Filtro de aceite lleno, junta aceitada. ¿Filtro montado?',
  },
  'fill.oilFilterDry': {
    title: 'Filtro de aceite, seco',
    ask: 'Filtro de aceite seco, junta aceitada. ¿Filtro montado?',
  },
  'fill.oilQuantity': {
    title: 'Aceite echado',
    ask: 'Eche {capacity} de aceite. ¿Cuánto ha entrado<, {unit}>?',
  },
  'fill.oilLevel': { title: 'Nivel de aceite', ask: '¿Nivel correcto? Varilla, entre las marcas.' },
  'fill.fuelInTank': { title: 'Combustible en el depósito', ask: '¿Combustible en el depósito<, {unit}>?' },
  'fill.biodieselShare': { title: 'Parte de biodiésel', ask: '¿Biodiésel, por ciento?' },
  'fill.fuelGrade': {
    title: 'Combustible para este frío',
    ask: '{tank} en el depósito, {share} de biodiésel. Para {coldest}: {advice}. ¿Combustible adecuado?',
  },
  'fill.firstFilterPreFilled': {
    title: 'Primer filtro de combustible, lleno',
    ask: 'Primer filtro lleno de combustible limpio, junta aceitada. ¿Filtro montado?',
  },
  'fill.firstFilterDry': {
    title: 'Primer filtro de combustible, seco',
    ask: 'Filtro de combustible: no hay otro detrás, así que seco. Junta aceitada. ¿Filtro montado?',
  },
  'fill.secondFilterPreFilled': {
    title: 'Segundo filtro de combustible, lleno',
    ask: 'Segundo filtro lleno de combustible limpio, junta aceitada. ¿Filtro montado?',
  },
  'fill.secondFilterDry': {
    title: 'Segundo filtro de combustible, seco',
    ask: 'Segundo filtro de combustible seco, junta aceitada. ¿Filtro montado?',
  },
  'fill.steeringFull': {
    title: 'Líquido de dirección',
    ask: '¿Dirección llena? Hasta la marca en frío.',
  },

  'prime.strokes': {
    title: 'Bombeos del cebador',
    ask: 'Bombee el cebador hasta que esté duro. ¿Cuántos bombeos?',
  },
  'prime.firm': { title: 'Cebador duro', ask: '¿Cebador duro?' },
  'prime.screwedHome': { title: 'Cebador enroscado', ask: '¿Cebador enroscado?' },
  'prime.electric': { title: 'Bomba de cebado', ask: 'Bomba de cebado: déjela marchar.' },
  'prime.electricBled': {
    title: 'Bomba de cebado sin aire',
    ask: '¿Purga terminada? Su sonido, parejo.',
  },
  'prime.noWeeps': { title: 'Nada rezuma', ask: 'Ayudante: ¿nada rezuma? Filtros y cebador.' },

  'walkRound.sensors': { title: 'Sensores enchufados', ask: '<Sensores.>' },
  'walkRound.hoses': {
    title: 'Mangueras y abrazaderas',
    ask: '¿Mangueras bien? Pasado el reborde, abrazaderas detrás y apretadas.',
  },
  'walkRound.boots': {
    title: 'Manguitos de admisión',
    ask: '¿Manguitos bien? Admisión y sobrealimentación, asentados y apretados.',
  },
  'walkRound.belts': { title: 'Correas', ask: '¿Correas bien? En sus canales y tensas.' },
  'walkRound.tools': {
    title: 'Herramientas fuera',
    ask: '¿Sin herramientas olvidadas? Trapos fuera también, ventilador libre.',
  },
  'walkRound.wiring': {
    title: 'Cableado',
    ask: '¿Cableado bien? Lejos del calor y de lo que se mueve.',
  },
  'walkRound.fasteners': {
    title: 'Tornillería marcada',
    ask: '¿Tornillería marcada? Primero apretada.',
  },

  'walkRound.rawWater': {
    title: 'Agua de mar cerrada',
    ask: '¿Válvula cerrada? {at}, o el escape se llena al dar arranque.',
  },
  'walkRound.strainer': {
    title: 'Filtro de mar',
    ask: '¿Filtro de mar limpio? Rodete entero, grifo libre, mangueras apretadas.',
  },
  'barOver.isolated': {
    title: 'Arranque aislado',
    ask: '¿Arranque aislado? Cable de batería o de arranque suelto, {off}.',
  },
  'barOver.prelube': {
    title: 'Galerías llenas con bomba',
    ask: '¿Aceite bombeado? Por {port}, hasta ver presión.',
  },
  'barOver.turboFeed': {
    title: 'Turbo aceitado',
    ask: '¿Turbo aceitado? Aceite en su entrada, rueda girada a mano, tubo puesto.',
  },
  'barOver.turned': {
    title: 'Girado a mano',
    ask: 'Gírelo con la barra, dos vueltas completas, en su sentido. ¿Gira libre, o se atasca?',
  },
  'barOver.toolOut': {
    title: 'Barra retirada',
    ask: '¿Barra retirada? Tapa puesta, arranque y batería conectados.',
  },

  'noFuelCrank.disabled': { title: 'Inyección anulada', ask: '{how} ¿Inyección anulada?' },
  'noFuelCrank.proved': { title: 'Anulación comprobada', ask: '{proof} ¿Anulación comprobada?' },
  'noFuelCrank.batteryLoad': {
    title: 'Batería con carga',
    ask: 'Probador de carga, la mitad de la corriente de arranque en frío, quince segundos. ¿Tensión más baja, o sin probador?',
  },
  'noFuelCrank.batteryRest': {
    title: 'Batería en reposo, sin probador',
    ask: 'Entonces en reposo, todo apagado. ¿Tensión de la batería?',
  },
  'noFuelCrank.manual': {
    title: 'Modo manual',
    ask: '¿Modo manual? {at}, sin el candado de quien lo puso; nunca automático, la etiqueta sigue.',
  },
  'noFuelCrank.untilPressure': {
    title: 'Arranque hasta ver presión de aceite',
    ask: '{before} La presión de aceite tarda unos {expected}.',
  },
  'noFuelCrank.holds': {
    title: 'La presión de aceite se mantiene',
    ask: '{before} Otra vez, corto: la presión debe volver y mantenerse.',
  },
  'noFuelCrank.voltage': {
    title: 'Tensión más baja con el arranque',
    ask: 'Ayudante: ¿tensión más baja mientras giraba?',
  },
  'noFuelCrank.oilLevel': {
    title: 'Nivel de aceite, galerías llenas',
    ask: 'Las galerías ya están llenas. Complete. ¿Nivel correcto?',
  },
  'noFuelCrank.restored': {
    title: 'Inyección restablecida',
    ask: '¿Inyección restablecida? Todo conectado de nuevo, los códigos que dejó, borrados.',
  },

  'keyOn.battery': { title: 'Batería en reposo', ask: '¿Tensión de la batería en reposo?' },
  'keyOn.lamps': { title: 'Testigos, con corriente', ask: '{on}, sin arrancar.< Testigos.>' },
  'keyOn.heaterHold': {
    title: 'Calentador',
    ask: 'Calentador: apague y encienda, espere al testigo.',
  },
  'keyOn.heaterDone': {
    title: 'Testigo de espera apagado',
    ask: 'Espera antes de arrancar: ¿testigo apagado?',
  },
  'keyOn.regeneration': {
    title: 'Regeneración anulada',
    ask: '¿Regeneración anulada? Inhibida, con su botón o con el comprobador.',
  },
  'keyOn.rawWater': {
    title: 'Agua de mar aún cerrada',
    ask: '¿Válvula cerrada? {at}, hasta que arranque.',
  },
  'keyOn.faults': {
    title: 'Códigos de avería',
    ask: 'Códigos de avería: ¿ningún código, o leer un código?',
  },

  'firstFire.crank': { title: 'Primer arranque', ask: '{before}' },
  'firstFire.oilPressure': {
    title: 'Aparece la presión de aceite',
    ask: '¿Presión de aceite correcta?',
  },
  'firstFire.rawWater': {
    title: 'Sale agua de mar',
    ask: 'Ayudante: abra {at}. ¿Sale agua, o escape seco?',
  },
  'firstFire.eyes': {
    title: 'Ojos y oídos',
    ask: 'Ayudante: lejos del ventilador, una mano en el corte. Mire y escuche.',
  },
  'firstFire.lamps': { title: 'Testigos, en marcha', ask: '<Testigos.>' },
  'firstFire.transient': { title: 'Avería vigilada', ask: '{fault}: ¿avería desaparecida?' },
  'firstFire.warningLamp': { title: 'Testigo de aviso, en marcha', ask: '<Testigo de aviso.>' },

  'firstRun.run': {
    title: 'Primera marcha corta',
    ask: 'Déjelo al ralentí. Mire, escuche, no toque nada.',
  },
  'firstRun.runUnloaded': {
    title: 'Primera marcha corta',
    ask: 'Déjelo sin carga. Mire, escuche, no toque nada.',
  },
  'firstRun.keyOff': {
    title: 'Apagado tras la primera marcha',
    ask: '{off}. ¿Motor apagado, ya no gira nada?',
  },
  'firstRun.drain': { title: 'El aceite baja', ask: 'Deje que baje el aceite.' },
  'firstRun.oilLevel': {
    title: 'Nivel de aceite tras la primera marcha',
    ask: '¿Nivel correcto? Varilla, entre las marcas.',
  },
  'firstRun.look': {
    title: 'Vuelta tras la primera marcha',
    ask: 'Ayudante: mire todo alrededor. El tapón sigue cerrado.',
  },
  'firstRun.rawWater': {
    title: 'Agua de mar cerrada de nuevo',
    ask: '¿Válvula cerrada? {at}, hasta que arranque.',
  },
  'firstRun.restart': {
    title: 'Segundo arranque',
    ask: 'Segundo arranque. {on}, espere al testigo. {before}',
  },
  'firstRun.oilPressure': {
    title: 'Vuelve la presión de aceite',
    ask: '¿Presión de aceite correcta?',
  },

  'firstRun.rawWaterOpen': {
    title: 'Sale agua de mar de nuevo',
    ask: 'Ayudante: abra {at}. ¿Sale agua, o escape seco?',
  },
  'checks.idle': {
    title: 'Régimen de ralentí',
    ask: 'Ralentí, medio minuto. ¿El más bajo, o el ralentí oscila?',
  },
  'checks.fixedSpeed': {
    title: 'Régimen sin carga',
    ask: 'Régimen sin carga, medio minuto. ¿El más bajo, o el ralentí oscila?',
  },
  'checks.oilPressure': { title: 'Presión de aceite al ralentí', ask: '¿Presión de aceite, {unit}?' },
  'checks.charging': { title: 'Tensión de carga', ask: '¿Tensión de carga?' },
  'checks.coolant': { title: 'Temperatura del refrigerante', ask: '¿Refrigerante<, {unit}>?' },
  'checks.leaks': {
    title: 'Búsqueda de fugas',
    ask: 'Ayudante: busque fugas con papel, nunca con la mano.',
  },

  'warmUp.watch': {
    title: 'Calentamiento',
    ask: '¿Refrigerante<, {unit}>? Termostato abierto, en cuanto se caliente la manguera superior.',
  },
  'warmUp.fastIdle': {
    title: 'Calentamiento al ralentí acelerado',
    ask: 'Mantenga {speed}. ¿Refrigerante<, {unit}>? Termostato abierto, en cuanto se caliente la manguera superior.',
  },
  'warmUp.hose': {
    title: 'Termostato abierto al tacto',
    ask: '¿Termostato abierto? Manguera superior: primero termómetro infrarrojo, la mano solo por fuera, nunca cerca del ventilador.',
  },
  'warmUp.steeringLocks': {
    title: 'Dirección de tope a tope',
    ask: 'Al ralentí: tapón de la dirección quitado, despacio de tope a tope. ¿Ninguna burbuja?',
  },
  'warmUp.levels': {
    title: 'Niveles, en marcha',
    ask: '¿Niveles correctos? Dirección en su marca. Vaso de expansión solo a la vista: su tapón sigue cerrado.',
  },

  'warmUp.bottle': {
    title: 'Vaso de expansión',
    ask: '¿Niveles correctos? Vaso de expansión solo a la vista: tapón cerrado.',
  },
  'sweeps.first': {
    title: 'Primera subida',
    ask: 'Despacio hasta {speed}, mantenga. {ask}',
  },
  'sweeps.second': { title: 'Segunda subida', ask: 'Hasta {speed}. {ask}' },
  'sweeps.third': { title: 'Tercera subida', ask: 'Hasta {speed}. {ask}' },
  'sweeps.fourth': { title: 'Cuarta subida', ask: 'Hasta {speed}. {ask}' },
  'sweeps.fifth': { title: 'Quinta subida', ask: 'Hasta {speed}. {ask}' },
  'sweeps.sixth': { title: 'Sexta subida', ask: 'Hasta {speed}. {ask}' },
  'sweeps.fixedPressure': {
    title: 'Presión a su régimen, en caliente',
    ask: '¿Presión de aceite a su régimen, en caliente<, {unit}>?',
  },
  'sweeps.newFaults': {
    title: 'Averías nuevas',
    ask: 'Códigos nuevos: ¿ningún código, o leer un código?',
  },
  'sweeps.faults': {
    title: 'Averías nuevas',
    ask: 'Vuelva al ralentí. Códigos nuevos: ¿ningún código, o leer un código?',
  },

  'shutdown.settle': {
    title: 'Reposo al ralentí',
    ask: 'Déjelo al ralentí, que se enfríe el turbo.',
  },
  'shutdown.settleUnloaded': {
    title: 'Reposo sin carga',
    ask: 'Déjelo sin carga, que se enfríe el turbo.',
  },
  'shutdown.keyOff': {
    title: 'Motor apagado',
    ask: '{off}. ¿Motor apagado, ya no gira nada?',
  },
  'shutdown.coolant': {
    title: 'Temperatura antes de apagar',
    ask: '¿Refrigerante antes de apagar<, {unit}>?',
  },
  'shutdown.firstSoak': {
    title: 'Calor residual',
    ask: 'Calor residual: la presión sube. Lejos de las mangueras, el tapón sigue cerrado.',
  },
  'shutdown.firstLook': { title: 'Primera mirada', ask: 'Ayudante: mire, a distancia.' },
  'shutdown.secondSoak': soakGoesOn,
  'shutdown.secondLook': { title: 'Segunda mirada', ask: 'Ayudante: mire de nuevo.' },
  'shutdown.thirdSoak': soakGoesOn,
  'shutdown.thirdLook': { title: 'Tercera mirada', ask: 'Ayudante: mire de nuevo.' },
  'shutdown.fourthSoak': soakGoesOn,
  'shutdown.fourthLook': { title: 'Cuarta mirada', ask: 'Ayudante: mire de nuevo.' },
  'shutdown.fifthSoak': soakGoesOn,
  'shutdown.fifthLook': { title: 'Quinta mirada', ask: 'Ayudante: mire de nuevo.' },
  'shutdown.sixthSoak': soakGoesOn,
  'shutdown.sixthLook': { title: 'Sexta mirada', ask: 'Ayudante: mire de nuevo.' },

  'signOff.cool': {
    title: 'Enfriado',
    ask: '¿Refrigerante<, {unit}>? Por encima de {limit} el tapón sigue cerrado.',
  },
  'signOff.coolantLevel': { title: 'Nivel de refrigerante, en frío', ask: '¿Circuito lleno, en frío?' },
  'signOff.oilLevel': {
    title: 'Nivel de aceite, en frío',
    ask: '¿Nivel correcto? Varilla, entre las marcas.',
  },
  'signOff.steeringLevel': { title: 'Nivel de dirección, en frío', ask: '¿Dirección llena?' },
  'signOff.retorque': { title: 'Lista de reapriete', ask: 'Lista de reapriete.' },
  'signOff.handBack': {
    title: 'Devolución',
    ask: '{clear} Por quien lo bloqueó: {items}. ¿Todo devuelto?',
  },
  'signOff.openItems': {
    title: 'Pendientes',
    ask: 'Jefe de taller: pendientes: {items}. ¿Pendientes anotados?',
  },
  'signOff.sign': {
    title: 'Firma',
    ask: 'Jefe de taller: para firmar este arranque, responda firmo.',
  },
} as const satisfies Record<string, { readonly title: string; readonly ask: string }>;
