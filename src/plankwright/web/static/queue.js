// Entries wait on the phone while it has no connection.
