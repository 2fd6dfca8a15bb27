### Keeping attempts on this device, and what goes wrong with it.

kept-never = nothing of this attempt yet
kept-full = This device has no room left for this page. Kept of this attempt: { $when }. What you do now is only on this page: hand it in or save your takes before you close it, or make room and go on.
kept-crowded = This device keeps as many attempts as it may, so this one is not kept. Open “This device” at the foot of the page, forget one, and go on. Kept of this attempt: { $when }.
room-title = This device keeps { $n } attempts, and no more
room-text = Nothing is thrown away unless you say so. Is the older half of yours no longer needed?
room-others = All of them belong to other people, so they stay. This attempt is then not kept: save the result file before you close the page.
room-forget = { $n ->
    [one] Forget my oldest one
   *[other] Forget my { $n } oldest
}
room-back = Back to the start
room-without = Begin without keeping it
kept-off = This browser keeps nothing for this page, as in a private window. Kept of this attempt: { $when }. It lives as long as the page is open: hand it in or save your takes before you close it.
kept-again = This attempt is kept again, with everything you have done.
kept-elsewhere = This attempt is open in another tab, which keeps it. Kept is what you do there; what you do here is not. Go on in the other tab, or close it and reload this page.
kept-overtaken = The other tab is closed, and what was done there is kept. What was done here since is not. Reload this page to go on from there.
kept-mended = One of the two copies of this attempt was damaged. The other one was good: kept is everything up to { $when }.
kept-damaged = What was kept of this attempt is damaged and cannot be read. It is laid aside on this device; this is a fresh bench.
kept-unusable = An attempt is kept from { $when }, but it cannot be gone on with: { $told } It is laid aside on this device, not thrown away; this is a fresh bench.
error-kept_version = it was kept by another version of this page (form { $found }).

refusal-world_over = This bench has run as long as one may. What is recorded can still be measured; a new seed opens a fresh one.
refusal-text_too_long = There is room for { $max } letters.
error-file_value = { $file }, sample { $sample }: { $found } is too large for a pulse signal.
