### The question before a test that belongs to a study of a class.

study-title = May we use your results?
study-about = Your class takes part in a study. It asks if practice on this page helps people learn.
study-what = If you say yes, your test points go into a table. The table has no names and no student IDs. Other people may read it.
study-free = You are free to say no. The test opens all the same, and your points stay the same.
study-later = You can change your mind. Tell your instructor, and your points are left out.
study-seen = Your answer is in your result. Your instructor can see it.
study-yes = Yes, use my results
study-no = No, do not use them

### The items of a class.

items-title = Items: what was easy, what was hard
items-about = A row for each fault in each scenario. Discrimination is above 0 where students who do well in the rest are more often right here. It says little with fewer than 30 answers.
items-item = Fault and scenario
items-answers = Answers
items-right = Right at first check
items-discrimination = Discrimination
items-misreading = Most frequent misreading
items-minutes = Median minutes
items-nothing = Nothing is wrong
items-percent = { $n }%
items-often = { $name } ({ $n })
