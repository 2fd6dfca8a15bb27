### The page without a network, and new versions of it.

offline-ready = From now on this page also opens without a network.
offline-new = There is a new version of this page. What you did is kept.
offline-take = Use the new version
