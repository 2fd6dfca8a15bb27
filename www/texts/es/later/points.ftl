### Las filas y los puntos de la rúbrica.

rubric-setup = Montaje y comprobaciones
rubric-signal = La señal
rubric-faults = Fallos
rubric-recording = Grabación
rubric-measurement = Medida
rubric-uncertainty = Incertidumbre
rubric-safety = Seguridad y consentimiento

rubric-point-linked = La computadora ve el registrador, y hay una grabación
rubric-point-socket = El sensor está en la entrada que se muestra
rubric-point-strap = La correa está ajustada, ni floja ni apretada
rubric-point-size = El pulso llena una buena parte del rango
rubric-point-hum = El zumbido es menos de una décima parte del pulso
rubric-point-unclipped = No hay nada recortado
rubric-point-calm = Sujeto y sensor quietos en la ventana de conteo
rubric-point-view = De 5 a 30 s en la pantalla, 100 muestras por segundo o más
rubric-point-named = Nombraste lo que fallaba
rubric-point-tested = Una prueba mostró qué fallaba
rubric-point-one_change = Un cambio cada vez
rubric-point-mended = La causa ya no está
rubric-point-long = La grabación es bastante larga
rubric-point-clean_window = Una ventana de conteo limpia y bastante larga
rubric-point-exact_count = Contaste una vez cada latido de ella
rubric-point-intervals_counted = Contaste bien los intervalos entre latidos de A a B
rubric-point-units = Leíste bien el tiempo, en segundos
rubric-point-formula = 60 × N / T
rubric-point-rate_worked = 60 × n / Δt
rubric-point-range_read = Leíste bien el rango
rubric-point-height_read = Leíste bien la altura
rubric-point-uncertainty = Una incertidumbre que encaja
rubric-point-middle_read = El tiempo del centro es correcto
rubric-point-told = Contaste a tu docente lo que viste
rubric-point-caution = Leíste y aceptaste la advertencia, antes de poner el sensor
