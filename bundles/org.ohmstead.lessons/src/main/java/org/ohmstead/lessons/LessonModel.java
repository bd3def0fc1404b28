// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

/** Works out what a lesson shows. It must give finite results for every setting that the lesson's controls can have. */
@FunctionalInterface
public interface LessonModel {
    /** Returns what the lesson shows for these values of its controls. */
    LessonResult at(Controls values);
}
