### Keeping attempts on this device, and what goes wrong with it.

kept-never = nothing of this attempt yet
kept-full = This device has no room left for this page. Kept of this attempt: { $when }. What you do now is only on this page. Submit it or save your recordings before you close the page, or make room.
kept-crowded = This device cannot keep more attempts, so this one is not kept. Open “This device” at the bottom of the page and delete one. Kept of this attempt: { $when }.
room-title = This device keeps { $n } attempts, and no more
room-text = Nothing is deleted unless you say so. Do you still need the older half of your attempts?
room-others = All of them belong to other people, so they stay. This attempt is then not kept. Save the result file before you close the page.
room-forget = { $n ->
    [one] Delete my oldest one
   *[other] Delete my { $n } oldest
}
room-back = Back to the start
room-without = Start without keeping it
kept-off = This browser keeps nothing for this page, as in a private window. Kept of this attempt: { $when }. The attempt is lost when you close the page. Submit it or save your recordings first.
kept-again = This attempt is kept again, with everything you did.
kept-elsewhere = This attempt is open in another browser tab. What you do there is kept; what you do here is not. Continue in the other browser tab, or close it and reload this page.
kept-overtaken = The other browser tab is closed, and what you did there is kept. What you did here since then is not kept. Reload this page to continue from there.
kept-mended = One of the two copies of this attempt was damaged. The other one was good. Everything up to { $when } is kept.
kept-damaged = The kept copy of this attempt is damaged and cannot be read. It stays on this device. Here you start again.
kept-unusable = An attempt is kept from { $when }, but it cannot be continued: { $told } It stays on this device. Here you start again.
error-kept_version = it was kept by another version of this page (form { $found }).

refusal-world_over = This attempt has reached its time limit. You can still measure what you recorded. A new seed starts again.
refusal-text_too_long = You can write at most { $max } letters.
error-file_value = { $file }, sample { $sample }: { $found } is too large for a pulse signal.
