// The page of a round: cells and notes by thumb, kept in the outbox first.
