### What happens behind the doors of the first screen, in half a minute.

glimpse-title = Half a minute: { $door }
glimpse-hold = Hold
glimpse-play = Go on
glimpse-again = Once more
glimpse-back = The picture before
glimpse-on = The next picture
glimpse-close = Close
glimpse-place = { $n } of { $of }

glimpse-rehearse-1 = Each lead finds its socket; the lamp tells.
glimpse-rehearse-2 = The pad goes under the fingertip, the strap round it.
glimpse-rehearse-3 = The range is turned until the pulse fills the strip.
glimpse-rehearse-4 = The charger goes, and the hum goes with it.
glimpse-rehearse-5 = From A to B, beat by beat, to a rate.

glimpse-check-1 = Something is wrong with this bench. You are not told what.
glimpse-check-2 = A tap, one change, a look: a test for each guess.
glimpse-check-3 = A clean stretch is recorded, a window marked.
glimpse-check-4 = N, T, the multiplier, the rate, in your own hand.
glimpse-check-5 = The first step that slipped is shown; not just the number.

glimpse-assign-1 = Choose what is wrong, and how bad it may be.
glimpse-assign-2 = See what one student will meet.
glimpse-assign-3 = See how many right answers a tolerance would fail.
glimpse-assign-4 = One link for all, and a heart for each.
glimpse-assign-5 = On Monday: who is ready, and who is not yet.
