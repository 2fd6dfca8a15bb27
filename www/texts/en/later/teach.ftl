### A page for instructors.

teach-title = For instructors
teach-lede = What this bench can take off your hands, how to fit it into a course, and what it cannot tell you.

teach-before = Before the lab
    .a = Half of a pulse lab goes into “there is no signal” and into why one multiplies by four. Let that half happen at home, until it is boring.
    .b = Give everyone one link a week ahead: “First wiring” for those who have never seen a recorder, then one bench with a fault to name. Twenty minutes are enough.
    .c = Ask for readiness, not for a grade: two rehearsals in a row on different hearts with 16 of 20 points or more.
teach-links = Links, files, codes
    .a = Everything that a link needs stands behind its #. No server is asked, and nothing leaves a student’s device unless the student hands it in.
    .b = With a key of yours and a code of theirs each student meets a heart of their own, and you can open the very same one.
    .c = What comes back is a file or a line of text with every action. It is checked by doing it all again.
teach-class = Looking at a class
    .a = Drop the files on the class view. The first list is of those who are not ready; the second, of what the class gets wrong.
    .b = Open any attempt to see its strip and its debrief as the student saw them.
    .c = In the room, show a fault on the large strip, ask what it is, then cure it.
teach-fair = What is fair
    .a = A count is judged inside the student’s own window, the arithmetic on the student’s own numbers, and the whole record decides only whether a rate is plausible.
    .b = A tolerance of two beats around a minute’s mean would fail four in ten students who count fifteen seconds rightly. The preview of fairness shows this for your own choice.
    .c = A field that cannot be read costs nothing. A beat on a cursor is held against nobody.
teach-limits = What it cannot do
    .a = The page runs on the student’s device. A result shows that its actions lead to its answers; it cannot show who did them, or with whose help.
    .b = The subject is simulated, from published figures where there are any. It is for teaching the measurement, not for diagnosis, and it replaces nobody’s supervised practice.
    .c = Before a sensor goes on a person, local codes, your institution’s rules and the clinicians responsible decide.
teach-hour = An hour in the room
    .a = Ten minutes: two look-alike faults on the large strip; the class says which test tells them apart.
    .b = Thirty minutes: pairs record on the real bench, mark fifteen seconds, count, work it out, and swap papers.
    .c = Ten minutes: all rates on the board, with their bands. Why do they differ, and by how much may they?
    .d = Ten minutes: the same after exercise, with shorter windows, and the question what the shorter window costs.
