"""Tests of lengths and other quantities."""
