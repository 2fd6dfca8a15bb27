### A page for instructors.

teach-title = For instructors
teach-lede = What these scenarios can do for you, how they fit into a course, and what they cannot tell you.

teach-before = Before the lab
    .a = Half of a pulse lab is spent on “there is no signal” and on why one multiplies by four. Let students do that half at home, until it is easy.
    .b = Give everyone one link a week before. Use “First wiring” for those who have never seen a recorder. Then use one scenario with a fault to name. Twenty minutes are enough.
    .c = Ask for readiness, not for a grade: two attempts in a row on different hearts with 16 of 20 points or more.
teach-links = Links, files, result codes
    .a = Everything that a link needs is after its #. No server is asked. Nothing leaves a student’s device unless the student submits it.
    .b = With your key and their student ID, each student gets their own heart. You can open the same one.
    .c = You get back a file or a line of text with every action. It is checked by a replay of all actions.
teach-class = Looking at a class
    .a = Drop the files on the page “Class results”. The first list shows who is not ready. The second shows what the class gets wrong.
    .b = Open any attempt to see its trace and its result as the student saw them.
    .c = In the room, show a fault on the large screen, ask what it is, then fix it.
teach-fair = What is fair
    .a = A count is judged in the student’s own counting window, and the arithmetic on the student’s own numbers. The whole recording only decides whether a heart rate is plausible.
    .b = Suppose you allow two beats around a minute’s mean. Then four of ten students who count fifteen seconds correctly would fail. “Is it fair?” shows this for your own choice.
    .c = A blank that cannot be read costs nothing. A beat on a cursor may be counted or not.
teach-safety = Safety in the room
    .a = Use only equipment that is rated for use on people. That is the idea of IEC 60601-1: even with one fault, hardly any current can flow through the person.
    .b = Never bypass or defeat the ground contact of a plug. Cut no ground pin, and use no adapter without ground. Do not ground a person. A person who touches ground gives a fault current a way back, through the body.
    .c = Take a damaged cord or plug out of service at once. Keep drinks and wet hands away from power. Wipe sensor and strap between people. For people who are allergic to latex, use straps without latex.
    .d = Not everyone may exercise, strain, keep their breath in or use ice. Anyone may say no, without a reason and without a loss. Local safety rules, your institution and licensed clinicians decide.
    .e = Ask for consent before you record a person, and say who will see the recording. Your institution’s rules say how.
    .f = If a person feels faint, stop at once. Let them sit or lie down. Get help as your institution’s rules say, and leave the rest to licensed clinicians.
teach-limits = What it cannot do
    .a = The page runs on the student’s device. A result shows that its actions lead to its answers. It cannot show who did them, or with whose help.
    .b = The subject is simulated, from published numbers where there are any. It is for teaching the measurement, not for diagnosis. It does not replace supervised practice.
    .c = Before you put a sensor on a person, follow local safety rules, your institution’s rules and the clinicians responsible.
teach-hour = An hour in the room
    .a = Ten minutes: show two similar faults on the large screen. The class says which test tells them apart.
    .b = Thirty minutes: pairs record with real equipment, put A and B fifteen seconds apart, count, calculate, and exchange worksheets.
    .c = Ten minutes: write all heart rates on the board, with their uncertainty. Why do they differ, and by how much may they?
    .d = Ten minutes: do the same after exercise, with shorter counting windows. Ask what the shorter counting window costs.
