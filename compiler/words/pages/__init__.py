"""Every word that stands on sheets and in booklets: functions of facts, a module a subject."""
