// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaEnumConstant;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What others can see of a package, one line for each type, field, constructor and method, in a form that stays the same. */
final class ApiListing {
    private ApiListing() {}

    /**
     * Returns the lines of a package, sorted.
     *
     * @param loader finds the classes and what they name
     * @param only the types to list by their simple name; all when it is empty
     */
    static List<String> of(JavaClasses classes, ClassLoader loader, String packageName, Set<String> only) {
        List<String> lines = new ArrayList<>();
        classes.stream()
                .filter(type -> type.getPackageName().equals(packageName) && isSeen(type))
                .filter(type -> only.isEmpty() || only.contains(outermost(type).getSimpleName()))
                .sorted(Comparator.comparing(JavaClass::getName))
                .forEach(type -> {
                    String name = type.getName().substring(packageName.length() + 1);
                    lines.add(head(type, name, loader));
                    members(type).forEach(member -> lines.add(name + " | " + member));
                });
        return lines;
    }

    private static JavaClass outermost(JavaClass type) {
        return type.getEnclosingClass().map(ApiListing::outermost).orElse(type);
    }

    private static boolean isSeen(JavaClass type) {
        boolean self = type.getModifiers().contains(JavaModifier.PUBLIC)
                || type.getModifiers().contains(JavaModifier.PROTECTED);
        return self
                && !type.isAnonymousClass()
                && type.getEnclosingClass().map(ApiListing::isSeen).orElse(true);
    }

    private static String head(JavaClass type, String name, ClassLoader loader) {
        String kind = type.isEnum() ? "enum" : type.isInterface() ? "interface" : type.isRecord() ? "record" : "class";
        List<String> above = new ArrayList<>();
        type.getSuperclass()
                .filter(parent -> !type.isInterface() && !type.isEnum() && !type.isRecord())
                .map(JavaType::getName)
                .filter(parent -> !parent.equals("java.lang.Object"))
                .ifPresent(above::add);
        type.getInterfaces().stream().map(JavaType::getName).sorted().forEach(above::add);
        String components = type.isRecord() ? components(type, loader) : "";
        return modifiers(type.getModifiers(), type.isInterface() || type.isEnum() || type.isRecord()) + kind + " "
                + name + components + (above.isEmpty() ? "" : " : " + String.join(", ", above));
    }

    /** The order of components is not in what ArchUnit reads. */
    private static String components(JavaClass type, ClassLoader loader) {
        try {
            return Stream.of(Class.forName(type.getName(), false, loader).getRecordComponents())
                    .map(component -> component.getGenericType().getTypeName() + " " + component.getName())
                    .collect(Collectors.joining(", ", "(", ")"));
        } catch (ClassNotFoundException missing) {
            throw new IllegalStateException(type + " was read, but cannot be loaded", missing);
        }
    }

    private static Set<String> members(JavaClass type) {
        Set<String> lines = new TreeSet<>();
        int ordinal = 0;
        for (JavaEnumConstant constant : type.isEnum() ? type.getEnumConstants() : Set.<JavaEnumConstant>of()) {
            lines.add("constant " + constant.name());
            ordinal++;
        }
        for (JavaField field : type.getFields()) {
            if (isSeen(field.getModifiers())
                    && !(ordinal > 0 && field.getRawType().equals(type))) {
                lines.add("field " + modifiers(field.getModifiers(), false) + name(field.getType()) + " "
                        + field.getName());
            }
        }
        for (JavaConstructor constructor : type.getConstructors()) {
            if (isSeen(constructor.getModifiers())) {
                lines.add("constructor " + modifiers(constructor.getModifiers(), false) + parameters(constructor));
            }
        }
        for (JavaMethod method : type.getMethods()) {
            if (isSeen(method.getModifiers()) && !isBridge(method)) {
                lines.add("method " + modifiers(method.getModifiers(), false) + name(method.getReturnType()) + " "
                        + method.getName() + parameters(method));
            }
        }
        return lines;
    }

    private static boolean isSeen(Set<JavaModifier> modifiers) {
        return modifiers.contains(JavaModifier.PUBLIC) || modifiers.contains(JavaModifier.PROTECTED);
    }

    private static boolean isBridge(JavaMethod method) {
        return method.getModifiers().contains(JavaModifier.BRIDGE)
                || method.getModifiers().contains(JavaModifier.SYNTHETIC);
    }

    private static String parameters(JavaCodeUnit unit) {
        String thrown = unit.getThrowsClause().getTypes().stream()
                .map(JavaClass::getName)
                .sorted()
                .collect(Collectors.joining(", "));
        return unit.getParameterTypes().stream().map(ApiListing::name).collect(Collectors.joining(", ", "(", ")"))
                + (thrown.isEmpty() ? "" : " throws " + thrown);
    }

    private static String name(JavaType type) {
        // ArchUnit writes type arguments as they are declared, an array of a class as the machine does.
        return type instanceof JavaClass raw && raw.isArray() ? name(raw.getComponentType()) + "[]" : type.getName();
    }

    private static String modifiers(Set<JavaModifier> modifiers, boolean ofItsKind) {
        List<String> words = new ArrayList<>();
        for (JavaModifier modifier : List.of(
                JavaModifier.PUBLIC,
                JavaModifier.PROTECTED,
                JavaModifier.STATIC,
                JavaModifier.ABSTRACT,
                JavaModifier.FINAL)) {
            boolean said = ofItsKind
                    && (modifier == JavaModifier.ABSTRACT
                            || modifier == JavaModifier.FINAL
                            || modifier == JavaModifier.STATIC);
            if (modifiers.contains(modifier) && !said) {
                words.add(modifier.name().toLowerCase(Locale.ROOT));
            }
        }
        return words.isEmpty() ? "" : String.join(" ", words) + " ";
    }
}
