# Records: what is kept where, a copy to keep elsewhere, what brings things back, and the history.

records-here = Everything is on this computer
records-demo-here = The demo is on this computer
records-holds = { $records ->
    [one] { $records } record
   *[other] { $records } records
  }, last changed { $when }
records-nothing = Nothing is entered yet.
records-where = Kept in { $path }

records-save-copy = Save a copy
records-copy-holds = One file with everything. It holds names and birth dates.
records-download = Save a copy of everything
records-bring-back = Bring back
records-bring-back-what = { $days ->
    [0] A file that you saved
    [one] A copy of { $days } day, or a file that you saved
   *[other] Copies of { $days } days, or a file that you saved
  }
records-open-bring-back = Bring back a copy
records-about-copies = the copies
records-no-demo-copies = The demo has no copies. 'Show the demo' in the cupboard puts it back as it was.
records-own-first = To bring files of your own, press 'Use my own family' at the top first.
records-copies-kept = The last seven copies stay, and every seventh before. They are in { $folder }.
records-copy-of = The copy of
records-pick-day = pick a day
records-copy-on = { $day } ({ $records } records)
records-put-back = Put this copy back
records-is-back = The copy of { $day } is put back.
records-unreadable-copy = This copy cannot be read. Please pick another day.
records-bring-file = A file with everything
records-file-holds = The file holds { $records } records of { $of }. With it in their place:
records-agree = Put this in the place of everything on record here
records-replace = Replace everything
records-replaced = Everything on record now comes from the file.
records-the-same = It holds exactly what is on record now.
records-unchanged = { $records } stay as they are. It can be undone afterwards.

records-history = What was changed
records-last = Last: { $said }
records-open-history = Look at what was changed
records-about-history = what was changed
records-changed = Changed: { $what }.
records-and-more = { $count } more
records-also-more = And { $count } more.
records-take-back = Undo: { $said }
records-taken-back-already = It was changed again since, or is undone already.
records-older = Show older ones
records-new = new
records-removed = removed
records-cannot-read = changed; this version of tripplan cannot read what it was
records-from-to = { $field }: from { $before } to { $after }
records-order = only the order changed

records-safe = Who can read this
records-safe-what = Whoever uses this computer under your name.
records-open-safe = Delete for good
records-about-safe = deleting
records-not-encrypted =
    Your records are not encrypted. Turn on your operating system's disk encryption, and lock the screen. Copies
    elsewhere are only as safe as that place.
records-nothing-to-delete = Nothing was removed or changed, so there is nothing to delete for good.
records-deleting-takes = What you removed can be undone, so it is still there. To delete a child, remove the
    child on Household first. Deleting for good takes:
records-earlier-states = earlier states of what is on record ({ $count }), with the list of what was changed
records-was-removed = what was removed: { $what }
records-everything-of = everything of { $people }, no longer in the household
records-name-in = the name in { $what }
records-copies-before = copies and files kept from before ({ $count }); what stays is copied anew
records-name-stands = { $people }: the name stands in { $what }. Change that yourself.
records-elsewhere = Files you exported, sheets and calendar entries elsewhere stay; delete those yourself.
records-agree-delete = Delete all of this for good; it cannot be undone
records-delete = Delete for good now
records-deleted = Deleted for good. What is left on record was copied anew.
records-outing = { $place } on { $day }
