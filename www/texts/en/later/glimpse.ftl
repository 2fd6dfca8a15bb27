### The preview behind a door of the first screen: the page itself in a frame.

glimpse-title = 30-second preview: { $door }
glimpse-hold = Pause
glimpse-play = Continue
glimpse-again = Again
glimpse-next = Next step
glimpse-close = Close

glimpse-assign-1 = Choose what is wrong, and how bad it may be.
glimpse-assign-2 = See the trace that one student will see.
glimpse-assign-3 = See how many right answers your limits would fail.
glimpse-assign-4 = Give one link to all. Each student gets a different heart.
