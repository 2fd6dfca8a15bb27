### An assignment inside a course site.

course-title = Course site
course-finish = Finish and hand over
course-none = No course site was found around this page. The attempt is kept on this device.
course-kept = Kept here and by the course site.
course-long = This attempt has become too long for the course site. This device keeps all of it, the site what came before.
course-long_nowhere = This attempt has become too long for the course site, and this device keeps nothing. Check your reading soon: result and score still go over.
course-refused = The course site did not take the last step. This device keeps it.
course-lost = Neither the course site nor this device took the last step. Hand in the result file under the debrief instead.
course-ended = The result is with the course site. This window can be closed.
course-suspended = The attempt is with the course site and goes on where you left it. This window can be closed.
course-other = The attempt that the course site keeps belongs to another version of this assignment. A new one begins.
