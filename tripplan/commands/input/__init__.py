"""What the commands read: questions, files, records, wishes."""
