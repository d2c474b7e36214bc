"""Sentences about cuts, cloth, sewing and quilts: functions of the records that planning gives."""
