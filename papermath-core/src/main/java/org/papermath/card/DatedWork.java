package org.papermath.card;

/** A day and what is done on it. */
record DatedWork(String day, String what) {}
