recovery-tickets-back = { $back } of tickets comes back if cancelled in time.
