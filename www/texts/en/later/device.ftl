### What this device keeps, and whose it is.

device-title = What this device keeps
device-lede = Your work is kept in this browser, on this device, and nowhere else. Here you see whose work is here, and you can delete it.
device-you = Who is working here now
device-you_none = Nobody has given a student ID in this browser tab. Work without an ID belongs to everybody who gives none.
device-you_known = A student ID that starts like this: { $hint }
device-you_guest = A guest. Nothing is kept on this device. Everything is lost when you close or reload this browser tab.
device-id = My student ID
device-be = Show my work
device-leave = I am done here
device-guest = Work as a guest
device-guest_leave = Stop being a guest
device-whose = Whose work is here
device-whose_none = Nothing is kept here.
device-owner_none = Without a student ID
device-owner_known = A student ID that starts like this: { $hint }
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
device-drop = Delete
device-drop_one = Delete: { $title }
device-forget_me = Delete all my work
device-forget_all = Delete everything on this device
device-forget_sure_me = This deletes your attempts, your notebook and your skill map on this device. You cannot get them back.
device-forget_sure_nobody = This deletes everything that was done without a student ID, also the work of others. You cannot get it back.
device-forget_sure_all = This deletes the work of everybody on this device, with drafts and settings. You cannot get it back.
device-forget_yes = Delete it
device-forget_no = Keep it
device-forgotten = Deleted.
device-aside = What could not be used
device-aside_about = Earlier attempts that you replaced, and things that the page could not read. Save one to look into it, or give it to a person who can help.
device-aside_save = Save
device-aside_some = { $n ->
    [one] One thing that was kept could not be read. It stays on this device.
   *[other] { $n } things that were kept could not be read. They stay on this device.
}
device-aside_go = See what could not be used
