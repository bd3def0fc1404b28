// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Pages of the project, which appear in the navigator and open as forms. A third party's page is a class like this in its own
 * bundle:
 *
 * <pre>{@code
 * @Component
 * public final class RemarksPage implements SectionPage {
 *     public String id() { return "acme.remarks"; }
 *     public String name() { return "Remarks"; }
 *     public int order() { return 650; }
 *     public String iconName() { return "section"; }
 *     public String summary(Project project) { return project.sheet().remarks().isEmpty() ? "none" : "written"; }
 *     public List<SectionItem> items(Project project) { return List.of(); }
 *     public String where() { return "$.sheet.remarks"; }
 *     public SectionControl create(Composite parent, ProjectDesk desk) { return new RemarksControl(parent, desk); }
 * }
 * }</pre>
 *
 * <p>Every change of a page goes through {@code desk.session()} and its {@code edit(name, change)}, so that it can be undone by
 * that name.
 */
package org.ohmstead.workbench.section;
