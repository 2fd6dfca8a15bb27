### Lo que se pregunta sobre un registro, y lo que puede fallar en él.

channel-title = ¿Qué canal es el pulso?
channel-text = { $file } tiene { $n } canales.
channel-label = Canal
channel-pictures = Cinco segundos de cada canal
channel-unit = { $channel } ({ $unit })

error-file_big = { $file } y lo que venía con él ocupan { $mb } MB. Esta página abre como mucho { $most } MB.
error-file_field = { $file }, { $place ->
    [byte] byte
   *[line] línea
} { $at }, { $field }: se esperaba { $expected ->
    [whole_number] un número entero de { $low } a { $high }
    [number] un número
    [above_zero] un número mayor que cero
    [other_than_low] un número distinto de su extremo inferior
   *[something] algo
}, se encontró «{ $found }».
error-file_short = { $file } está incompleto: su cabecera dice { $expected } bytes, y hay { $found }.
error-file_unsupported = { $file } no se puede leer aquí: { $what ->
    [discontinuous] es una grabación con huecos. Se leen EDF y EDF+C, que no los tienen
    [bdf] tiene muestras de 24 bits. Se leen EDF y EDF+, de 16 bits
    [format] sus muestras están en un formato que no se lee. Se leen los formatos 8, 16, 61, 80, 160 y 212
    [segments] es una grabación de varios segmentos. Se puede abrir un segmento solo
    [frames] sus señales tienen varias muestras por trama
    [skew] sus señales están desplazadas entre sí
    [no_channel] no tiene ningún canal con muestras
   *[unknown] no es una tabla de texto, ni EDF, ni una grabación WFDB
} ({ $found }).
error-file_alone = { $file } guarda sus muestras en { $needs }. Elige o suelta los dos juntos.
error-file_headless = { $file } se lee con su cabecera, el archivo que acaba en .hea. Elige o suelta los dos juntos.
error-file_several = { $file } y { $other } son dos grabaciones. Abre una cada vez.
error-file_channel = { $file } no tiene el canal «{ $found }».
error-file_rate = { $file }: se esperaba una frecuencia de muestreo de { $low_hz } a { $high_hz } Hz, se encontró { $found_hz } Hz.
error-file_length = { $file }: se esperaban de { $low } a { $high } muestras, se encontraron { $found }.
error-file_missing = { $file }: faltan { $found } de { $of } valores; puede faltar como mucho uno de cada { $limit_one_in }.
error-file_checksum = { $file }: las muestras de { $channel } suman { $found }, pero su cabecera dice { $expected }. Uno de los archivos está dañado.
error-file_annotation = { $file }, byte { $at }: una anotación está incompleta, o queda antes que la que la precede.
error-file_range = { $file }: los valores de { $low } a { $high } no caben en este tipo de archivo.
error-file_notes = { $file }: { $found } notas son demasiadas para una grabación de esta duración.
