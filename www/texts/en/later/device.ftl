### What this device keeps, and whose it is.

device-title = What this device keeps
device-lede = Your work is kept in this browser, on this device, and nowhere else. Here you see whose work lies here, and you can take it away.
device-you = Who is working here now
device-you_none = Nobody has given a student ID in this tab. Work without an ID belongs to everybody who gives none.
device-you_known = A student ID that begins like this: { $hint }
device-you_guest = A guest. Nothing is kept on this device. Everything is gone when this tab is closed or reloaded.
device-id = My student ID
device-be = Show my work
device-leave = I am done here
device-guest = Work as a guest
device-guest_leave = Stop being a guest
device-whose = Whose work lies here
device-whose_none = Nothing is kept here.
device-owner_none = Without a student ID
device-owner_known = A student ID that begins like this: { $hint }
device-owner_you = (you)
device-owner_has = { $attempts ->
    [one] one attempt
   *[other] { $attempts } attempts
}, { $pages ->
    [one] one page in the notebook
   *[other] { $pages } pages in the notebook
}
device-mine = My attempts
device-mine_none = None of yours.
device-attempt = from { $when }
device-drop = Forget
device-drop_one = Forget: { $title }
device-forget_me = Forget me
device-forget_all = Forget everything on this device
device-forget_sure_me = Your attempts, your notebook and your skill map on this device are taken away. They cannot be brought back.
device-forget_sure_nobody = Everything that was done without a student ID is taken away, also what others did. It cannot be brought back.
device-forget_sure_all = The work of everybody on this device is taken away, with drafts and settings. It cannot be brought back.
device-forget_yes = Forget it
device-forget_no = Keep it
device-forgotten = Forgotten.
device-aside = What was laid aside
device-aside_about = Earlier attempts that made room for a fresh start, and things that could not be read. They are in nobody’s way. Save one to look into it or to give it to somebody who can.
device-aside_save = Save
device-aside_some = { $n ->
    [one] One thing that was kept could not be read. It was laid aside.
   *[other] { $n } things that were kept could not be read. They were laid aside.
}
device-aside_go = See what was laid aside
