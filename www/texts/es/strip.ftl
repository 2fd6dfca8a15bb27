### La tira: ajustes, cursores, marcas, registros, lo que se puede decir de ella.

rate-title = ¿Con qué frecuencia se muestreó?
rate-text = { $file } tiene un valor en cada línea y ningún tiempo. Con su frecuencia de muestreo se puede dibujar frente al tiempo.
rate-label = Muestras por segundo, Hz
rate-problem = Debería ser un número de { $low } a { $high }.
rate-yes = Abrirlo
rate-no = Dejarlo

recording-about = Esto es un registro, no una mesa simulada. Nadie conoce su frecuencia verdadera: tu lectura se compara con lo que encuentra el detector de latidos del propio proyecto, y un detector también puede errar.

value-off = no

strip-title = La tira
strip-modes = Qué muestra la tira
strip-live = En vivo
strip-hold = Pausa
strip-take = Registro { $v } · { $s } s
strip-record = Registrar
strip-stop = Detener registro
strip-recording = Registrando. Todo lo que pase bajo el estilete se guarda hasta que lo detengas.
strip-kept = El registro { $v } está guardado, dura { $s } s y queda abierto para medir.
strip-listen = Escuchar
strip-listen_on = Oyes un clic en cada cresta del trazo en vivo, más agudo cuanto más alta, y el zumbido como zumbido.
strip-listen_off = La tira vuelve a estar en silencio.
strip-listen_none = Este navegador no da sonido a la página.
strip-start = Poner en marcha el tambor
strip-dock_open = Mostrar la tira
strip-back = Media pantalla atrás
strip-forth = Media pantalla adelante
strip-scroll = Posición en el registro
strip-scroll_value = de { $from } a { $to }
strip-pen_at = estilete en { $s }
strip-margin_live = { $title }, en vivo
strip-margin_hold = { $title }, en pausa
strip-margin_take = { $title }, registro { $v }
strip-margin_recording = registrando
strip-margin_measure = toca un latido para marcarlo, toca la marca para quitarla
strip-foot_take = de { $from } a { $to }, total { $all }

take-export = Guardar registro en CSV
take-file = dicrotic-registro-{ $v }.csv

cursor-a = Cursor A
cursor-b = Cursor B
cursor-a_s = Cursor A, s
cursor-b_s = Cursor B, s
cursor-unplaced = aún sin colocar
cursor-place_first = Coloca antes el cursor.

measure-title = Medir
measure-interval = Intervalo de A a B
measure-marks = Marcas en la ventana
measure-none = –
measure-hint = Arrastra A y B, o muévelos con las flechas y las teclas de página. Con un cursor enfocado, M marca un latido donde está.

marks-at_a = Marcar en A
marks-at_b = Marcar en B
marks-clear = Borrar las marcas
marks-list = Marcas de latido, una a una
marks-none = Aún no hay marcas.
marks-remove = Quitar la marca de { $s }
marks-made = Marcado en { $s }.
marks-gone = Marca quitada.

set-paper_only = Papel
set-paper = Papel y estilete
set-filters = Filtros
set-converter = Entrada y conversor
set-time_base = Base de tiempo, por pantalla
set-time_less = Base de tiempo más corta
set-time_more = Base de tiempo más larga
set-range = Rango a fondo de escala
set-range_less = Rango menor
set-range_more = Rango mayor
set-zero = Poner el cero aquí
set-zero_clear = Deshacer el cero
set-zero_at = cero en { $v }
set-invert = Invertir la polaridad
set-high_pass = Paso alto
set-low_pass = Paso bajo
set-high_pass_order = Orden del paso alto
set-low_pass_order = Orden del paso bajo
set-order-1 = orden 1
set-order-2 = orden 2
set-notch = Filtro de red
set-average = Promediado
set-input = Entrada mostrada
set-input_n = entrada { $v }
set-rate = Frecuencia de muestreo
set-bits = Resolución
set-anti_alias = Filtro antialias
set-shown = Trazo dibujado
set-scale = Escala de valores
set-scale_by = ×{ $v }
set-line = { $time } · { $range }
set-line_high_pass = paso alto { $v }, { $order }
set-line_low_pass = paso bajo { $v }, { $order }
set-line_notch = filtro de red { $v }
set-line_inverted = invertido
set-line_scale = escala ×{ $v }
set-line_hidden = trazo sin dibujar

summary-ask = Tira en palabras
summary-no_data = No llegan muestras, así que no hay línea.
summary-flat = Una línea plana.
summary-trace = Un trazo que se mueve; se ven { $s } segundos.
summary-fuzz-none = La línea está limpia.
summary-fuzz-mild = Lleva un poco de ruido fino.
summary-fuzz-clear = Lleva un ruido bien visible.
summary-fuzz-heavy = Un ruido fuerte tapa su forma.
summary-height-tiny = Apenas se aparta del centro.
summary-height-small = Es pequeño en la pantalla.
summary-height-good = Llena una buena parte de la pantalla.
summary-height-tall = Llena casi toda la pantalla.
summary-height-over = Se sale de la pantalla.
summary-clipped = Algunas partes altas o bajas están recortadas.
summary-drift = Toda la línea sube y baja despacio.
