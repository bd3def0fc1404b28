// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

/**
 * What the templates of all designs see beside their own content.
 *
 * @param paged whether it is for pages rather than for a screen
 * @param style the style sheet
 * @param language code of the language
 * @param title of the document
 * @param author who published or prepared it
 * @param subject one sentence about the document
 * @param amplifier maker and model
 * @param footer left part of the page's footer
 * @param lab head of the laboratory
 */
public record PageView(
        boolean paged,
        String style,
        String language,
        String title,
        String author,
        String subject,
        String amplifier,
        String footer,
        LabHead lab) {}
