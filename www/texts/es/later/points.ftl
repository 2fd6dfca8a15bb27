### Las filas y los puntos de la rúbrica.

rubric-setup = Montaje y comprobaciones
rubric-signal = La señal
rubric-faults = Trato con las averías
rubric-recording = Registro
rubric-measurement = Medida
rubric-uncertainty = Incertidumbre
rubric-safety = Seguridad y consentimiento

rubric-point-linked = La computadora ve la unidad, y se hizo un registro
rubric-point-socket = El sensor está en la entrada que se muestra
rubric-point-strap = La correa está ajustada, ni floja ni apretada
rubric-point-size = El pulso llena una buena parte del rango
rubric-point-hum = El zumbido es menos de una décima parte del pulso
rubric-point-unclipped = No hay nada recortado
rubric-point-calm = El sujeto y el sensor estuvieron quietos en la ventana
rubric-point-view = De 5 a 30 s en la pantalla, 100 muestras por segundo o más
rubric-point-named = Lo que fallaba está nombrado
rubric-point-tested = Una prueba mostró qué fallaba
rubric-point-one_change = Un cambio cada vez
rubric-point-mended = La causa ya no está
rubric-point-long = El registro dura lo bastante
rubric-point-clean_window = Una ventana limpia y lo bastante larga
rubric-point-exact_count = Cada latido de ella contado una vez
rubric-point-intervals_counted = Los intervalos de A a B bien contados
rubric-point-units = El tiempo bien leído, en segundos
rubric-point-formula = 60 × N / T
rubric-point-rate_worked = 60 × n / Δt
rubric-point-range_read = El rango bien leído
rubric-point-height_read = La altura bien leída
rubric-point-uncertainty = Una incertidumbre que la ventana sostiene
rubric-point-middle_read = El momento del medio de la ventana, bien
rubric-point-told = Lo que se vio, dicho al instructor
rubric-point-caution = La advertencia leída y aceptada
