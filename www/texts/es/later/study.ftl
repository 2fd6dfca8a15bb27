### La pregunta antes de una prueba que es parte de un estudio de una clase.

study-title = ¿Podemos usar tus resultados?
study-about = Tu clase participa en un estudio. Pregunta si practicar en esta página ayuda a aprender.
study-what = Si dices que sí, los puntos de tus pruebas van a una tabla. La tabla no tiene nombres ni ID de estudiante. Otras personas la pueden leer.
study-free = Puedes decir que no. La prueba se abre igual, y tus puntos son los mismos.
study-later = Puedes cambiar de opinión. Díselo a tu docente, y tus puntos se quitan.
study-seen = Tu respuesta está en tu resultado. Tu docente la puede ver.
study-yes = Sí, usen mis resultados
study-no = No, no los usen
