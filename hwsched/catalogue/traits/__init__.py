"""Facts that several part kinds share: leads, listings, loads, the parts of a control unit's power, leaf materials.

Here belongs what two or more kinds declare alike. What one kind alone has stands in that kind's file.
"""
