### The page without a network, and new versions of it.

offline-ready = From now on this page also opens without a network.
offline-new = A new version of this page is here. What you have done is kept.
offline-take = Change to it
