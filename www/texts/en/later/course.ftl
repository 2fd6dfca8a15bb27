### An assignment inside a course site.

course-title = Course site
course-own_misreading = The instructor’s own: { $name }
course-which = Attempt { $n } of { $of }
course-finish = Finish and submit
course-none = This page found no course site. The attempt is kept on this device.
course-kept = The course site has everything up to now.
course-long = This attempt has become too long for the course site. This device keeps all of it. The site keeps what came before.
course-long_nowhere = This attempt has become too long for the course site, and this device keeps nothing. Check your reading soon: result and score are still sent.
course-refused = The course site did not accept the last step. This device keeps it.
course-lost = Neither the course site nor this device kept the last step. Save the result file under “Result”, and give it to your instructor.
course-ended = The course site has your result. You can close this browser tab.
course-ended_left = The course site has your result. You have another attempt: open this activity again. You can close this browser tab.
course-suspended = The course site has your attempt. You can continue it later. You can close this browser tab.
course-other = The attempt on the course site belongs to another version of this assignment. A new one starts.
course-begin = Start attempt { $n }
course-begin_of = Start attempt { $n } of { $of }
course-new_closes = This attempt is then over. Its points stay on the course site.
course-stay = Stay here
course-no_tries = { $n ->
    [one] There is one attempt, and you have used it.
   *[other] There are { $n } attempts, and you have used them all.
}
course-untaken_title = The course site missed an attempt
course-untaken = This device keeps an attempt of yours, from { $when }, that the course site never got. Do you want to continue it?
course-untaken_yes = Continue it
course-untaken_no = Start a new one
course-over_title = Your result
course-over_about = The course site gets your points, each step and what you did. Your instructor sees them there. When you are done here, press “Finish and submit” at the top.
course-points = Points: { $n } of 100. The course site counts it as passed from { $need } points.
course-left_none = This was the last attempt.
course-left = { $n ->
    [one] There is one more attempt. “Try again with a new seed” starts it.
   *[other] There are { $n } more attempts. “Try again with a new seed” starts the next.
}
course-lost_title = The course site does not show my result
course-lost_about = Save the result file and give it to your instructor. It has the scenario, everything you did, and your readings.
course-save = Save the result file
course-goes = What is sent
course-goes_where = Your work goes to { $host }. Your instructor reads it there.
course-goes_what = These are sent: your student ID, your points, how long you worked, and each step with what you typed. Everything that you do here is sent too, so that you can continue later. Nothing else leaves this device.
course-goes_close = Close
course-again = The course site does not know yet that you are finished. This device keeps everything. Check the network, then press the button again.
course-looks = The course site opened this only to look at it. Nothing is counted and nothing is kept.
course-looked = You can close this browser tab.
course-launch_broken = The course site opened this activity, but something is missing. Tell your instructor. Open the activity again from the course site.
course-launch_over = This visit is over. Open the activity again from the course site. Nothing is lost.
course-launch_refused = The course site does not let this visit start. Open the activity again from the course site.
course-launch_unreachable = This page cannot reach the course site now. Check the network, and load this page again.
course-launch_used = The link that opened this page works only once. Open the activity again from the course site. Nothing is lost.
