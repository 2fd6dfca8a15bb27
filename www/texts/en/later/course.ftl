### An assignment inside a course site.

course-title = Course site
course-own_misreading = The instructor’s own: { $name }
course-which = Try { $n } of { $of }
course-finish = Finish and hand over
course-none = No course site was found around this page. The attempt is kept on this device.
course-kept = The course site has everything up to now.
course-long = This attempt has become too long for the course site. This device keeps all of it, the site what came before.
course-long_nowhere = This attempt has become too long for the course site, and this device keeps nothing. Check your reading soon: result and score still go over.
course-refused = The course site did not take the last step. This device keeps it.
course-lost = Neither the course site nor this device took the last step. Save the result file under the debrief, and give it to your instructor.
course-ended = The result is with the course site. This window can be closed.
course-ended_left = The result is with the course site. You have another try: open this task again. This window can be closed.
course-suspended = The attempt is with the course site and goes on where you left it. This window can be closed.
course-other = The attempt that the course site keeps belongs to another version of this assignment. A new one begins.
course-begin = Begin try { $n }
course-begin_of = Begin try { $n } of { $of }
course-new_closes = The try that stands here is then over. Its points stay with the course site.
course-stay = Stay here
course-no_tries = { $n ->
    [one] There is one try, and it is used.
   *[other] There are { $n } tries, and all are used.
}
course-untaken_title = The course site missed an attempt
course-untaken = This device keeps an attempt of yours, from { $when }, that the course site never took. Do you want to go on with it?
course-untaken_yes = Go on with it
course-untaken_no = Begin a new one
course-over_title = Your result
course-over_about = Your points, each step and what you did go to the course site. Your instructor sees them there. When you have done what you want to do here, press “Finish and hand over” at the top.
course-points = Points: { $n } of 100. The course site counts it as passed from { $need } points.
course-left_none = This was the last try.
course-left = { $n ->
    [one] There is one more try: “Try again with a new seed” begins it.
   *[other] There are { $n } more tries: “Try again with a new seed” begins the next.
}
course-lost_title = The course site does not show my result
course-lost_about = Save the result file and give it to your instructor. It holds the bench, everything you did, and your readings.
course-save = Save the result file
course-goes = What is sent
course-goes_where = Your work goes to { $host }. Your instructor reads it there.
course-goes_what = Sent are: your student ID of the course site, your points, how long you worked, each step with what you typed, and everything you do at the bench, so that you can go on later. Nothing else leaves this device.
course-goes_close = Close
course-again = The course site could not be told that you are finished. This device keeps everything. Check the network, then press the button again.
course-looks = The course site opened this to look at. Nothing is counted and nothing is kept.
course-looked = This window can be closed.
course-launch_broken = The course site opened this task with something missing. Tell your instructor, and open the task again from the course site.
course-launch_over = This visit is over. Open the task again from the course site. Nothing is lost.
course-launch_refused = The course site does not let this visit begin. Open the task again from the course site.
course-launch_unreachable = The course site cannot be reached now. Check the network, and load this page again.
course-launch_used = This page was opened by a link that works once. Open the task again from the course site. Nothing is lost.
