// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.regex.Pattern;

/**
 * How the results sheet looks: its design, its paper, the head of the laboratory, and what a comparison stands beside each other.
 *
 * @param design how the sheet is laid out
 * @param paper what it is printed on
 * @param address of the laboratory, in lines; may be empty
 * @param contact telephone, mail or the like, in lines; may be empty
 * @param accreditation what the laboratory says of its accreditation, in its own words; may be empty
 * @param logoFile the laboratory's logo, a PNG, JPEG or SVG file within the project's folder such as "sheets/logo.svg"; may be empty
 * @param comparedProjects folders of other projects that a comparison takes in, as seen from the project's own folder; may be empty
 * @param comparedPeriods periods that a comparison tells apart, such as "2025" or "2024-03..2024-06"; none for all time
 */
public record SheetLayout(
        SheetDesign design,
        PaperSize paper,
        String address,
        String contact,
        String accreditation,
        String logoFile,
        List<String> comparedProjects,
        List<String> comparedPeriods) {
    /** How the names of files end that can be a logo, in lower case. */
    public static final List<String> LOGO_ENDINGS = List.of(".png", ".jpg", ".jpeg", ".svg");

    private static final Pattern OUTWARD =
            Pattern.compile("^[/\\\\]|^[A-Za-z]:|(^|[/\\\\])\\.\\.([/\\\\]|$)|\\p{Cntrl}");

    /** The full report on A4 without a head of its own. */
    public static final SheetLayout USUAL =
            new SheetLayout(SheetDesign.FULL, PaperSize.A4, "", "", "", "", List.of(), List.of());

    /** Checks that nothing is missing or blank in a list and that the logo lies within the project's folder, and copies the lists. */
    public SheetLayout {
        Checks.present(design, "design");
        Checks.present(paper, "paper");
        Checks.present(address, "address");
        Checks.present(contact, "contact");
        Checks.present(accreditation, "accreditation");
        Checks.present(logoFile, "logoFile");
        if (OUTWARD.matcher(logoFile).find()) {
            throw new IllegalArgumentException("logoFile is \"" + logoFile
                    + "\"; it must lie within the project's folder, such as \"sheets/logo.svg\"");
        }
        comparedProjects = List.copyOf(comparedProjects);
        comparedProjects.forEach(each -> Checks.named(each, "comparedProjects"));
        comparedPeriods = List.copyOf(comparedPeriods);
        comparedPeriods.forEach(each -> Checks.named(each, "comparedPeriods"));
    }

    /** Returns this in another design. */
    public SheetLayout withDesign(SheetDesign newDesign) {
        return new SheetLayout(
                newDesign, paper, address, contact, accreditation, logoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this on other paper. */
    public SheetLayout withPaper(PaperSize newPaper) {
        return new SheetLayout(
                design, newPaper, address, contact, accreditation, logoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this with another address. */
    public SheetLayout withAddress(String newAddress) {
        return new SheetLayout(
                design, paper, newAddress, contact, accreditation, logoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this with other words on how to reach the laboratory. */
    public SheetLayout withContact(String newContact) {
        return new SheetLayout(
                design, paper, address, newContact, accreditation, logoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this with other words on the accreditation. */
    public SheetLayout withAccreditation(String newAccreditation) {
        return new SheetLayout(
                design, paper, address, contact, newAccreditation, logoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this with another logo, or none when the text is empty. */
    public SheetLayout withLogoFile(String newLogoFile) {
        return new SheetLayout(
                design, paper, address, contact, accreditation, newLogoFile, comparedProjects, comparedPeriods);
    }

    /** Returns this with other projects to compare with. */
    public SheetLayout withComparedProjects(List<String> newComparedProjects) {
        return new SheetLayout(
                design, paper, address, contact, accreditation, logoFile, newComparedProjects, comparedPeriods);
    }

    /** Returns this with other periods to compare. */
    public SheetLayout withComparedPeriods(List<String> newComparedPeriods) {
        return new SheetLayout(
                design, paper, address, contact, accreditation, logoFile, comparedProjects, newComparedPeriods);
    }
}
