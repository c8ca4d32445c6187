"""What stands round every place: rail, pages, inspector, drawer, menus, commands, and the way back."""
