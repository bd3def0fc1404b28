// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import java.util.Locale;

/**
 * Brings lessons of its own. A bundle registers it as an OSGi service, for example by the annotation {@code @Component} of Declarative
 * Services.
 */
public interface LessonProvider {
    /**
     * Returns its lessons.
     *
     * @param locale the language for texts and the form of numbers; a provider that lacks it answers in English
     */
    List<Lesson> lessons(Locale locale);
}
