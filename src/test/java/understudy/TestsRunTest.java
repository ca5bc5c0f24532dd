package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAnnotation;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.Example;
import org.junit.jupiter.api.Disabled;
import org.junit.jupiter.api.Test;

/** A test that no runner runs looks exactly like one that passes. */
class TestsRunTest {

    private static final Set<String> TEST_MARKS = Set.of(
            "org.junit.jupiter.api.Test",
            "org.junit.jupiter.api.RepeatedTest",
            "org.junit.jupiter.api.TestFactory",
            "org.junit.jupiter.api.TestTemplate",
            "org.junit.jupiter.params.ParameterizedTest",
            "net.jqwik.api.Property",
            "net.jqwik.api.Example");

    private static final Set<String> GROUP_MARKS = Set.of("org.junit.jupiter.api.Nested", "net.jqwik.api.Group");

    /** File names that the test runner picks up unless told otherwise. */
    private static final String RUN_NAME = "Test.*|.*Test|.*Tests|.*TestCase";

    @Test
    void everyTestMethodHasARunner() {
        JavaClasses tests =
                new ClassFileImporter().withImportOption(new ImportOption.OnlyIncludeTests()).importPackages("understudy");
        List<JavaMethod> methods = tests.stream()
                .filter(type -> !type.getFullName().startsWith(Lost.class.getName()))
                .flatMap(TestsRunTest::testMethods).toList();
        assertThat(methods).isNotEmpty().allSatisfy(method ->
                assertThat(whyItWouldNotRun(method)).as(method.getFullName()).isEmpty());
    }

    @Test
    void aTestThatWouldNotRunIsSeen() {
        JavaClasses lost = new ClassFileImporter().importClasses(
                Lost.class, Lost.NotMarked.class, Lost.SwitchedOff.class, Lost.Odd.class);
        assertThat(lost.stream().flatMap(TestsRunTest::testMethods).map(TestsRunTest::whyItWouldNotRun))
                .hasSize(4).allSatisfy(why -> assertThat(why).isPresent());
    }

    private static Stream<JavaMethod> testMethods(JavaClass type) {
        return type.getMethods().stream().filter(method -> marks(method.getAnnotations()).anyMatch(TEST_MARKS::contains));
    }

    private static Optional<String> whyItWouldNotRun(JavaMethod method) {
        JavaClass type = method.getOwner();
        if (marks(method.getAnnotations()).anyMatch(TestsRunTest::skips) || marks(type.getAnnotations()).anyMatch(TestsRunTest::skips)) {
            return Optional.of("it is switched off, always or on some machines");
        }
        if (method.getModifiers().contains(JavaModifier.PRIVATE) || method.getModifiers().contains(JavaModifier.STATIC)) {
            return Optional.of("runners pass over private and static methods");
        }
        if (type.getModifiers().contains(JavaModifier.ABSTRACT)) {
            return Optional.of("nothing makes an object of an abstract class");
        }
        JavaClass outer = type;
        while (outer.getEnclosingClass().isPresent()) {
            if (marks(outer.getAnnotations()).noneMatch(GROUP_MARKS::contains)) {
                return Optional.of("an inner class runs only when it is marked as a group of tests");
            }
            outer = outer.getEnclosingClass().get();
        }
        return outer.getSimpleName().matches(RUN_NAME)
                ? Optional.empty()
                : Optional.of("the runner picks classes by name, and " + outer.getSimpleName() + " isn't one of them");
    }

    private static boolean skips(String mark) {
        return mark.startsWith("org.junit.jupiter.api.Disabled")
                || mark.startsWith("org.junit.jupiter.api.condition.")
                || mark.equals("net.jqwik.api.Disabled");
    }

    private static Stream<String> marks(Set<? extends JavaAnnotation<?>> annotations) {
        return annotations.stream().map(mark -> mark.getRawType().getName());
    }

    /** One test for each way of being passed over. */
    static final class Lost {

        @Example
        void inAClassOfAnotherName() {}

        static final class NotMarked {
            @Test
            void inAnInnerClassWithoutAMark() {}
        }

        static final class SwitchedOff {
            @Test
            @Disabled("an example of a test that does not run")
            void switchedOff() {}
        }

        abstract static class Odd {
            @Test
            private void hidden() {}
        }
    }
}
