"""The solid model of the finished opening, its clashes, and what rules and fitting ask of it. No rule stands here."""
