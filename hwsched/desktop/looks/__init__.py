"""How everything on the screen looks and speaks: colours, letters, icons, pictures, the language."""
