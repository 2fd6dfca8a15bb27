### What happens behind the doors of the first screen, in half a minute.

glimpse-title = 30-second preview: { $door }
glimpse-hold = Pause
glimpse-play = Continue
glimpse-again = Again
glimpse-back = The picture before
glimpse-on = The next picture
glimpse-close = Close
glimpse-place = { $n } of { $of }

glimpse-rehearse-1 = Put each cable in its socket. The indicator light comes on.
glimpse-rehearse-2 = Put the sensor on the fingertip and the strap around it.
glimpse-rehearse-3 = Change the range until the pulse fills the screen.
glimpse-rehearse-4 = Unplug the charger, and the hum is gone.
glimpse-rehearse-5 = Count from A to B, beat by beat. Calculate the heart rate.

glimpse-check-1 = Something is wrong. You are not told what.
glimpse-check-2 = Tap, change one thing, look. Test each of your ideas.
glimpse-check-3 = Record a clean part. Set a counting window.
glimpse-check-4 = Write N, T, the multiplier and the heart rate yourself.
glimpse-check-5 = You see the first step that went wrong, not just the number.

glimpse-assign-1 = Choose what is wrong, and how bad it may be.
glimpse-assign-2 = See what one student will meet.
glimpse-assign-3 = See how many right answers your limits would fail.
glimpse-assign-4 = One link for all, and another heart for each student.
glimpse-assign-5 = After that: who is ready, and who is not yet.
