// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetLogo;

/**
 * The head of the laboratory above a sheet.
 *
 * @param shown whether there is one
 * @param name of the laboratory; may be empty
 * @param address in lines
 * @param contact in lines
 * @param accreditation in lines
 * @param logo address of the logo for a screen; empty when there is none
 * @param logoWidth width of the logo in CSS pixels; 0 when there is none
 * @param logoHeight its height in CSS pixels
 */
public record LabHead(
        boolean shown,
        String name,
        List<String> address,
        List<String> contact,
        List<String> accreditation,
        String logo,
        long logoWidth,
        long logoHeight) {
    private static final double MOST_WIDTH = 170;
    private static final double MOST_HEIGHT = 60;

    /** Returns the head with at most so many lines of each kind, none longer than so many characters. */
    LabHead limited(int lines, int characters) {
        return new LabHead(
                shown,
                PlainText.shortened(name, characters),
                limited(address, lines, characters),
                limited(contact, lines, characters),
                limited(accreditation, lines, characters),
                logo,
                logoWidth,
                logoHeight);
    }

    private static List<String> limited(List<String> texts, int lines, int characters) {
        return texts.stream()
                .limit(lines)
                .map(line -> PlainText.shortened(line, characters))
                .toList();
    }

    static LabHead of(ResultsSheet sheet) {
        Project project = sheet.project();
        SheetLayout layout = project.sheet().layout();
        List<String> address = layout.address().lines().toList();
        List<String> contact = layout.contact().lines().toList();
        List<String> accreditation = layout.accreditation().lines().toList();
        double ratio = sheet.form().logo().map(SheetLogo::aspectRatio).orElse(0.0);
        double width = Math.min(MOST_WIDTH, MOST_HEIGHT * ratio);
        return new LabHead(
                sheet.form().logo().isPresent() || !address.isEmpty() || !contact.isEmpty() || !accreditation.isEmpty(),
                project.sheet().laboratory(),
                address,
                contact,
                accreditation,
                sheet.form().logo().map(SheetLogo::dataAddress).orElse(""),
                Math.round(width),
                ratio > 0 ? Math.round(width / ratio) : 0);
    }
}
