### A question bank: what is asked of a student, and the part of the screen where an instructor makes it.

## In the questions, also those that the command line makes: no choices between forms here

bank-item = { $title }: trace { $n }
bank-question = What is the heart rate from A to B, in beats/min? Count the beats whose highest point is between A and B. Read the time from A to B. Then calculate the heart rate.
bank-alt = A pulse trace of { $seconds } s. One division of the time grid is { $division } s. Cursor A is at { $a } s, cursor B is at { $b } s.
bank-answer = { $rate } beats/min
bank-right = Correct: { $beats } beats in { $seconds } s. { $beats } × 60 / { $seconds } = { $rate } beats/min.
bank-ask-beats_missed = Where is the distance between two peaks about twice the usual distance?
bank-ask-one_too_few = Did you count each peak between A and B? How many peaks make one gap?
bank-wrong = { $see } { $ask }

## On the screen

bank-title = Question bank
bank-about = Each question shows a clean trace, asks for the heart rate, and has one correct answer. Each wrong answer comes from a known mistake and has its own feedback. The traces are made for the bank. They are no student’s.
bank-from = Traces from
bank-count = Number of questions
bank-seed = Seed
bank-seed_about = The same seed gives the same questions.
bank-form = File
bank-form_qti = QTI 3, for a course site
bank-form_csv = Table (CSV) with pictures
bank-save = Save the question bank
bank-stop = Stop
bank-preview = The first question
bank-preview_making = Making the first question…
bank-preview_right = correct
bank-preview_feedback = Feedback: { $told }
bank-working = Question { $done } of { $all }
bank-packing = Packing…
bank-done = { $all ->
    [one] Saved: 1 question.
   *[other] Saved: { $all } questions.
    }
bank-stopped = Stopped. No file was saved.
bank-count_bad = The number of questions must be a whole number from 1 to { $most }.
bank-seed_bad = The seed must be a whole number from 0 to 18446744073709551615.

error-bank_unclear = No recording of this person shows a pulse that is clean enough to count ({ $takes } attempts). Choose other traces.
error-bank_alike = The known mistakes give nearly the same heart rate on all recordings of this person ({ $stills } attempts). Choose other traces.
error-bank_words = A text of question { $number } cannot be used ({ $field }: { $found }; expected { $expected }).
error-bank_full = A question bank has at most { $most } questions.
error-bank_large = The question bank is too large for one file. Make fewer questions.
