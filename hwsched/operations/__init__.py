"""Every verb that changes, checks or issues something: one transaction and one change set each."""
